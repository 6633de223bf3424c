import { Router } from 'express';
import { type SittingCutList, sittingCutList } from '../bench/cut-list.ts';
import { tipOf } from '../bench/marked-cuts.ts';
import { cutChangeSchema } from '../schemas/cuts.ts';
import type { Services } from '../services.ts';
import { keepCutMark } from '../store/cut-marks.ts';
import { plantById } from '../store/plants.ts';
import { sittingById } from '../store/sittings.ts';
import { overlaid } from './overlay.ts';
import { found, RequestProblem, sent } from './problems.ts';

/** The cut list of a sitting, and what the grower does and writes of each cut. */
export function cutRoutes(services: Services): Router {
  const { db } = services;
  const routes = Router();

  routes.get('/sittings/:id/cut-list', async (request, response) => {
    response.json((await listOf(request.params.id)).list);
  });

  routes.patch('/sittings/:id/cuts/:cutId', async (request, response) => {
    const { id, cutId } = request.params;
    const change = sent(cutChangeSchema, request.body);
    const { list, keptAs } = await listOf(id);
    const cut = list.cuts.find((listed) => listed.id === cutId);
    if (cut === undefined) {
      throw new RequestProblem(
        404,
        'This cut is no longer on the list: its photos were measured anew, or another ball was chosen. Load the list again.',
      );
    }
    const mark = overlaid({ state: cut.state, chosen: cut.chosen, note: cut.note }, change);
    keepCutMark(db, id, { ...mark, cutId, tip: tipOf(cut) }, keptAs.get(cutId) ?? null);
    response.json((await listOf(id)).list);
  });

  async function listOf(sittingId: string): Promise<SittingCutList> {
    const sitting = found('sitting', sittingById(db, sittingId));
    const plant = found('plant', plantById(db, sitting.plantId));
    const answer = await sittingCutList(services, plant, sitting);
    if (answer.from === null) throw new RequestProblem(answer.later ? 409 : 404, answer.hint);
    return answer;
  }

  return routes;
}
