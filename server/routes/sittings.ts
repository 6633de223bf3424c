import { Router } from 'express';
import { aimedPlant } from '../bench/aimed-plant.ts';
import { sittingHull } from '../bench/sitting-hull.ts';
import { sittingsBetween } from '../bench/sittings-between.ts';
import { sittingChangeSchema } from '../schemas/sitting.ts';
import type { Services } from '../services.ts';
import { settleNormalLeaf } from '../store/normal-leaf.ts';
import { type SittingRow, setLeftOut, sittingById } from '../store/sittings.ts';
import { setSittingVersion } from '../store/stand-sittings.ts';
import { versionOn } from '../store/stand-versions.ts';
import { found, RequestProblem, sent } from './problems.ts';
import { requireStand } from './require-stand.ts';

/** The sittings themselves: the stand on which one was taken, and the solid of its views. */
export function sittingRoutes(services: Services): Router {
  const { db, queue, today } = services;
  const routes = Router();

  routes.patch('/sittings/:id', (request, response) => {
    const sitting = found('sitting', sittingById(db, request.params.id));
    const { standId, leftOut } = sent(sittingChangeSchema, request.body);
    if (leftOut !== undefined) leaveOut(sitting, leftOut);
    if (standId !== undefined) moveTo(sitting, standId);
    const plant = found('plant', aimedPlant(db, sitting.plantId, today()));
    const [changed] = sittingsBetween(db, plant, today(), { from: sitting.day, to: sitting.day });
    response.json(found('sitting', changed ?? null));
  });

  routes.get('/sittings/:id/hull', async (request, response) => {
    const sitting = found('sitting', sittingById(db, request.params.id));
    const hull = await sittingHull(services, sitting.id);
    if (!hull.ok) throw new RequestProblem(404, hull.hint);
    response.json(hull.solid);
  });

  /** What its leaf taught goes and comes with it. */
  function leaveOut({ id, plantId }: SittingRow, reason: string | null): void {
    db.transaction(() => {
      setLeftOut(db, id, reason);
      settleNormalLeaf(db, plantId);
    })();
    queue.wake();
  }

  function moveTo(sitting: SittingRow, standId: string | null): void {
    requireStand(db, standId);
    const version = standId === null ? null : versionOn(db, standId, sitting.day);
    if (version?.id === (sitting.standVersionId ?? undefined)) return;
    db.transaction(() => setSittingVersion(db, sitting, version))();
    queue.wake();
  }

  return routes;
}
