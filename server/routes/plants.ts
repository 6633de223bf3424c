import { Router } from 'express';
import { benchPage, plantPage } from '../bench/pages.ts';
import { plantAnswer } from '../bench/plant-answer.ts';
import { plantChangeSchema, plantFormSchema } from '../schemas/plant.ts';
import type { Services } from '../services.ts';
import { queuePlant } from '../store/due-view.ts';
import { addPlant, changePlant, type PlantRow, plantById, putSamplesAway } from '../store/plants.ts';
import { sittingOfDay } from '../store/sittings.ts';
import { setSittingVersion } from '../store/stand-sittings.ts';
import { versionOn } from '../store/stand-versions.ts';
import { overlaid } from './overlay.ts';
import { found, sent } from './problems.ts';
import { requireStand } from './require-stand.ts';

/** The bench and its plants. */
export function plantRoutes({ db, queue, today }: Services): Router {
  const routes = Router();

  routes.get('/bench', (_request, response) => {
    response.json(benchPage(db, today()));
  });

  routes.post('/plants', (request, response) => {
    const form = sent(plantFormSchema, request.body);
    requireStand(db, form.standId);
    const id = addPlant(db, form, { sample: false });
    response
      .status(201)
      .location(`/api/plants/${id}`)
      .json(plantAnswer(found('plant', plantById(db, id))));
  });

  routes.get('/plants/:id', (request, response) => {
    response.json(plantPage(db, found('plant', plantById(db, request.params.id)), today()));
  });

  routes.patch('/plants/:id', (request, response) => {
    const plant = found('plant', plantById(db, request.params.id));
    const changed = overlaid(plant, sent(plantChangeSchema, request.body));
    if (changed.standId !== plant.standId) requireStand(db, changed.standId);
    db.transaction(() => {
      changePlant(db, plant.id, changed);
      // The rim is the photo's scale.
      if (changed.rimMm !== plant.rimMm) queuePlant(db, plant.id);
      if (changed.standId !== plant.standId) moveToday(changed);
    })();
    queue.wake();
    response.json(plantAnswer(found('plant', plantById(db, plant.id))));
  });

  routes.post('/sample/put-away', (_request, response) => {
    putSamplesAway(db, true);
    response.status(204).end();
  });

  routes.post('/sample/bring-back', (_request, response) => {
    putSamplesAway(db, false);
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
