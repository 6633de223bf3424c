import { sittingTask } from '../measuring/joining.ts';
import type { HullSolid } from '../schemas/turned.ts';
import type { Services } from '../services.ts';
import { joiningOfSitting, keepHull, keptHull } from '../store/joinings.ts';
import { viewsToJoin } from '../store/views-to-join.ts';

type SittingHull =
  | { readonly ok: true; readonly solid: HullSolid }
  | { readonly ok: false; readonly hint: string };

/** The solid of a sitting, made when it is first asked for; `hint` says what to do when there is none. */
export async function sittingHull(
  { db, hullOfSitting }: Pick<Services, 'db' | 'hullOfSitting'>,
  sittingId: string,
): Promise<SittingHull> {
  const joining = joiningOfSitting(db, sittingId);
  if (joining === null || joining.viewCount < 2) {
    return refused(
      'One photo shows no solid. Turn the pot and take more, best at 0, 45, 90 and 135 degrees.',
    );
  }
  if (joining.isMeasuring || !joining.isCurrent || joining.state !== 'ready' || joining.report === null) {
    return refused('The photos of this sitting are not joined yet. Try again in a moment.');
  }
  const { plan, turn, notes } = joining.report;
  if (plan.hull === null) return refused(notes[0] ?? 'These photos do not close round the plant.');
  const kept = keptHull(db, sittingId);
  if (kept) return { ok: true, solid: kept };
  const hull = await hullOfSitting(sittingTask(viewsToJoin(db, sittingId)));
  if (hull === null) return refused('These photos do not close round the plant.');
  const heavy = plan.lopsidedness;
  const solid = {
    ...hull,
    weakAzimuthDeg: turn?.toLightAzimuthDeg ?? null,
    heavyAzimuthDeg: heavy === null || heavy.even ? null : heavy.azimuthDeg,
  };
  keepHull(db, joining, solid);
  return { ok: true, solid };
}

function refused(hint: string): SittingHull {
  return { ok: false, hint };
}
