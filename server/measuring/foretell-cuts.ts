import type { Cut } from '../../core/cut/cut.ts';
import { foretellPhoto } from '../../core/cut/foretold-photo.ts';
import { type ForetoldSitting, foretellSitting } from '../../core/cut/foretold-sitting.ts';
import { reducedCopy } from '../../core/measures/reduced-copy.ts';
import type { TakenView } from '../../core/turned/taken-view.ts';
import type { PlantPoint } from '../../core/turned/turned-view.ts';
import { type SittingTask, takenViews } from './join-sitting.ts';

/** A cut list to foretell; plain data, as it crosses to a worker thread. */
export interface ForetellTask {
  /** The views that the list rests on. */
  readonly sitting: SittingTask;
  readonly cuts: readonly Pick<Cut, 'id' | 'tipPx' | 'cutPx' | 'tipMm' | 'cutMm'>[];
  /** Names of the cuts that are made. */
  readonly chosen: readonly string[];
  /** The middle of the ball that a turned sitting is cut to; `null` for a list of one photo. */
  readonly centreMm: PlantPoint | null;
}

/** What the views of a list would be after its chosen cuts; `lean` is `null` for one photo. */
export interface Foretold extends Pick<ForetoldSitting, 'views'> {
  readonly lean: ForetoldSitting['lean'] | null;
}

/** Foretells the views of a cut list; `null` where there is no ball to cut to. */
export async function foretellCuts({
  sitting,
  cuts,
  chosen,
  centreMm,
}: ForetellTask): Promise<Foretold | null> {
  const taken = (await takenViews(sitting)).map(quickened);
  const names = new Set(chosen);
  if (centreMm === null) {
    const [photo] = taken;
    if (photo === undefined || photo.canopy === null) return null;
    const view = foretellPhoto({ report: photo.report, canopy: photo.canopy }, cuts, names);
    return view && { views: [view], lean: null };
  }
  const placed = cuts.flatMap(({ id, tipMm, cutMm }) =>
    tipMm === null || cutMm === null ? [] : [{ id, tipMm, cutMm }],
  );
  return foretellSitting(taken, sitting, { cuts: placed, centreMm, chosen: names });
}

/** Form needs no finer mask than this, px across: a tick on the list is answered at once. */
const FINEST_WIDTH_PX = 800;

/** A view with a mask no finer than need be; both sides of a change are measured on it. */
function quickened(view: TakenView): TakenView {
  const { canopy } = view;
  const pxPerPx = canopy === null ? 1 : Math.round(canopy.width / FINEST_WIDTH_PX);
  if (canopy === null || pxPerPx < 2) return view;
  const { width, height } = canopy;
  const whole = { leftPx: 0, topPx: 0, widthPx: width, heightPx: height };
  return { ...view, canopy: reducedCopy(canopy, whole, pxPerPx).mask };
}
