import { Router } from 'express';
import { z } from 'zod';
import { aimAtDay, aimedPlant } from '../bench/aimed-plant.ts';
import { benchPage, plantPage } from '../bench/pages.ts';
import { plantAnswer } from '../bench/plant-answer.ts';
import { sittingsBetween } from '../bench/sittings-between.ts';
import { daySchema } from '../schemas/basics.ts';
import { plantChangeSchema, plantFormSchema } from '../schemas/plant.ts';
import type { Services } from '../services.ts';
import { queuePlant } from '../store/due-view.ts';
import { entryOf } from '../store/entries.ts';
import { addPlant, changePlant, type PlantRow, putSamplesAway } from '../store/plants.ts';
import { setSampleShowsRemoved } from '../store/shows.ts';
import { sittingOfDay } from '../store/sittings.ts';
import { setSittingVersion } from '../store/stand-sittings.ts';
import { versionOn } from '../store/stand-versions.ts';
import { overlaid } from './overlay.ts';
import { sendPacked } from './packed-answers.ts';
import { found, sent } from './problems.ts';
import { requireStand } from './require-stand.ts';

const pageQuerySchema = z.object({ sittings: z.coerce.number().int().nonnegative().optional() });
const daysQuerySchema = z.object({ from: daySchema, to: daySchema });

/** The bench and its plants. */
export function plantRoutes({ db, queue, blooms, today }: Services): Router {
  const routes = Router();

  routes.get('/bench', async (request, response) => {
    await sendPacked(db, { request, response }, blooms.facts, () => benchPage(db, blooms.facts));
  });

  routes.post('/plants', (request, response) => {
    const form = sent(plantFormSchema, request.body);
    requireStand(db, form.standId);
    const id = db.transaction(() => {
      const added = addPlant(db, form, { sample: false });
      aimAtDay(db, found('plant', aimedPlant(db, added, today())), form.showDay);
      return added;
    })();
    response
      .status(201)
      .location(`/api/plants/${id}`)
      .json(plantAnswer(found('plant', aimedPlant(db, id, today()))));
  });

  routes.get('/plants/:id', async (request, response) => {
    const { sittings } = sent(pageQuerySchema, request.query);
    await blooms.forPage(request.params.id);
    const plant = found('plant', aimedPlant(db, request.params.id, today()));
    response.json(plantPage(db, plant, today(), sittings ?? null));
  });

  routes.get('/plants/:id/sittings', (request, response) => {
    const plant = found('plant', aimedPlant(db, request.params.id, today()));
    response.json(sittingsBetween(db, plant, today(), sent(daysQuerySchema, request.query)));
  });

  routes.patch('/plants/:id', (request, response) => {
    const plant = found('plant', aimedPlant(db, request.params.id, today()));
    const change = sent(plantChangeSchema, request.body);
    const changed = overlaid(plant, change);
    if (change.aimShowId != null) found('entry', entryOf(db, plant.id, change.aimShowId));
    if (changed.standId !== plant.standId) requireStand(db, changed.standId);
    db.transaction(() => {
      changePlant(db, plant.id, changed);
      if (change.showDay !== undefined) aimAtDay(db, { ...changed, showDay: plant.showDay }, change.showDay);
      // The rim is the photo's scale.
      if (changed.rimMm !== plant.rimMm) queuePlant(db, plant.id);
      if (changed.standId !== plant.standId) moveToday(changed);
    })();
    queue.wake();
    response.json(plantAnswer(found('plant', aimedPlant(db, plant.id, today()))));
  });

  routes.post('/sample/put-away', (_request, response) => {
    db.transaction(() => {
      putSamplesAway(db, true);
      setSampleShowsRemoved(db, true);
    })();
    response.status(204).end();
  });

  routes.post('/sample/bring-back', (_request, response) => {
    db.transaction(() => {
      putSamplesAway(db, false);
      setSampleShowsRemoved(db, false);
    })();
    response.status(204).end();
  });

  /** Today's photos belong to the new place if no stand was told when they came; earlier ones keep theirs. */
  function moveToday({ id, standId }: PlantRow): void {
    const sitting = sittingOfDay(db, id, today());
    if (sitting === null || sitting.standVersionId !== null || standId === null) return;
    setSittingVersion(db, sitting, versionOn(db, standId, sitting.day));
  }

  return routes;
}
