import { Router } from 'express';
import { aimedPlant } from '../bench/aimed-plant.ts';
import { entryChangeSchema, entryFormSchema, showChangeSchema, showFormSchema } from '../schemas/show.ts';
import { entryAnswers } from '../season/entry-answers.ts';
import { seasonFacts } from '../season/season-facts.ts';
import { showList } from '../season/show-list.ts';
import type { Services } from '../services.ts';
import { entryOf, setEntry, withdraw } from '../store/entries.ts';
import { plantById } from '../store/plants.ts';
import { addShow, changeShow, setShowRemoved, showById } from '../store/shows.ts';
import { overlaid } from './overlay.ts';
import { sendPacked } from './packed-answers.ts';
import { found, noSuch, RequestProblem, sent } from './problems.ts';

/** Shows, and the plants entered for them. */
export function showRoutes({ db, blooms, today }: Services): Router {
  const routes = Router();

  routes.get('/shows', async (request, response) => {
    await sendPacked(db, { request, response }, blooms.facts, () => showList(db, blooms.facts));
  });

  routes.post('/shows', (request, response) => {
    const id = addShow(db, sent(showFormSchema, request.body));
    response.status(201).location(`/api/shows/${id}`).json(showById(db, id));
  });

  routes.patch('/shows/:id', (request, response) => {
    const show = found('show', showById(db, request.params.id));
    const change = sent(showChangeSchema, request.body);
    const { classes, ...rest } = show;
    changeShow(db, show.id, { ...overlaid(rest, change), classes: change.classes ?? [...classes] });
    response.json(showById(db, show.id));
  });

  routes.delete('/shows/:id', (request, response) => {
    if (!setShowRemoved(db, request.params.id, true)) throw noSuch('show');
    response.status(204).end();
  });

  routes.post('/shows/:id/restore', (request, response) => {
    if (!setShowRemoved(db, request.params.id, false)) throw noSuch('show');
    response.json(showById(db, request.params.id));
  });

  routes.put('/plants/:id/entries/:showId', (request, response) => {
    const { id, showId } = request.params;
    found('plant', plantById(db, id));
    const { classId, result } = sent(entryFormSchema, request.body);
    enter(id, showId, classId, result);
    response.json(entryAnswer(id, showId));
  });

  routes.patch('/plants/:id/entries/:showId', (request, response) => {
    const { id, showId } = request.params;
    const entry = found('entry', entryOf(db, id, showId));
    const changed = overlaid(entry, sent(entryChangeSchema, request.body));
    enter(id, showId, changed.classId, changed.result);
    response.json(entryAnswer(id, showId));
  });

  routes.delete('/plants/:id/entries/:showId', (request, response) => {
    if (!withdraw(db, request.params.id, request.params.showId)) throw noSuch('entry');
    response.status(204).end();
  });

  function enter(plantId: string, showId: string, classId: string | null, result: string): void {
    const show = found('show', showById(db, showId));
    if (classId !== null && !show.classes.some(({ id }) => id === classId)) {
      throw new RequestProblem(422, 'This show has no such class. Choose one of its classes, or none.');
    }
    setEntry(db, { plantId, showId, classId, result });
  }

  function entryAnswer(plantId: string, showId: string) {
    const plant = found('plant', aimedPlant(db, plantId, today()));
    const entries = entryAnswers(db, seasonFacts(db, today()), plant, null);
    return found('entry', entries.find((entry) => entry.showId === showId) ?? null);
  }

  return routes;
}
