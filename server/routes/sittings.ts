import { Router } from 'express';
import { sittingAnswers } from '../bench/sitting-answer.ts';
import { sittingChangeSchema } from '../schemas/sitting.ts';
import type { Services } from '../services.ts';
import { sittingById } from '../store/sittings.ts';
import { setSittingVersion } from '../store/stand-sittings.ts';
import { versionOn } from '../store/stand-versions.ts';
import { viewsOfPlant } from '../store/views.ts';
import { found, sent } from './problems.ts';
import { requireStand } from './require-stand.ts';

/** The sittings themselves: the stand on which one was taken. */
export function sittingRoutes({ db, queue }: Services): Router {
  const routes = Router();

  routes.patch('/sittings/:id', (request, response) => {
    const sitting = found('sitting', sittingById(db, request.params.id));
    const { standId } = sent(sittingChangeSchema, request.body);
    requireStand(db, standId);
    const version = standId === null ? null : versionOn(db, standId, sitting.day);
    if (version?.id !== (sitting.standVersionId ?? undefined)) {
      db.transaction(() => setSittingVersion(db, sitting, version))();
      queue.wake();
    }
    const views = viewsOfPlant(db, sitting.plantId).filter(({ sittingId }) => sittingId === sitting.id);
    response.json(found('sitting', sittingAnswers(views)[0] ?? null));
  });

  return routes;
}
