import { Router } from 'express';
import { aimedPlant } from '../bench/aimed-plant.ts';
import { cutListAnswer, listedCuts } from '../bench/cut-list.ts';
import { tipOf } from '../bench/marked-cuts.ts';
import { type CutList, cutChangeSchema } from '../schemas/cuts.ts';
import type { Services } from '../services.ts';
import { keepCutMark } from '../store/cut-marks.ts';
import { sittingById } from '../store/sittings.ts';
import { noteWork } from '../store/worked-sittings.ts';
import { overlaid } from './overlay.ts';
import { found, RequestProblem, sent } from './problems.ts';

/** The cut list of a sitting, and what the grower does and writes of each cut. */
export function cutRoutes(services: Services): Router {
  const { db, today } = services;
  const routes = Router();

  routes.get('/sittings/:id/cut-list', async (request, response) => {
    response.json(await answer(request.params.id));
  });

  routes.patch('/sittings/:id/cuts/:cutId', async (request, response) => {
    const { id, cutId } = request.params;
    const change = sent(cutChangeSchema, request.body);
    const { cuts, keptAs } = (await listOf(id)).listed;
    const cut = cuts.find((listed) => listed.id === cutId);
    if (cut === undefined) {
      throw new RequestProblem(
        404,
        'This cut is no longer on the list: its photos were measured anew, or another ball was chosen. Load the list again.',
      );
    }
    const mark = overlaid({ state: cut.state, chosen: cut.chosen, note: cut.note }, change);
    keepCutMark(db, id, { ...mark, cutId, tip: tipOf(cut) }, keptAs.get(cutId) ?? null);
    // Which photos show the plant before the work may have changed.
    if (noteWork(db, id)) services.queue.wake();
    response.json(await answer(id));
  });

  async function listOf(sittingId: string) {
    const sitting = found('sitting', sittingById(db, sittingId));
    const plant = found('plant', aimedPlant(db, sitting.plantId, today()));
    const listed = await listedCuts(services, plant, sitting);
    if (listed.from === null) throw new RequestProblem(listed.later ? 409 : 404, listed.hint);
    return { plant, sitting, listed };
  }

  async function answer(sittingId: string): Promise<CutList> {
    const { plant, sitting, listed } = await listOf(sittingId);
    return cutListAnswer(services, plant, sitting, listed);
  }

  return routes;
}
