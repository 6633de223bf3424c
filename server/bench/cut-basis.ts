import type { PhotoReport } from '../../core/report.ts';
import type { Stem3D } from '../../core/stems/stem-3d.ts';
import type { PlantPoint } from '../../core/turned/turned-view.ts';
import { sittingTask } from '../measuring/joining.ts';
import type { Services } from '../services.ts';
import { joiningOfSitting, type SittingJoining } from '../store/joinings.ts';
import { keepStems, keptStems } from '../store/placed-stems.ts';
import type { ViewRow } from '../store/views.ts';
import { viewsToJoin } from '../store/views-to-join.ts';

/** What a cut list is made from: stems and the plant's present ball, from one photo or from a sitting joined in the round. */
export type CutBasis = OnePhotoBasis | TurnedBasis;

export interface OnePhotoBasis {
  readonly from: 'one-photo';
  readonly viewIds: readonly string[];
  readonly report: PhotoReport;
  readonly turnDeg: number | null;
  readonly present: PresentBall;
  readonly unseen: readonly string[];
}

export interface TurnedBasis {
  readonly from: 'turned';
  readonly viewIds: readonly string[];
  readonly stems: readonly Stem3D[];
  readonly present: PresentBall & { readonly radiusMm: number; readonly centreMm: PlantPoint };
  readonly unseen: readonly string[];
}

interface PresentBall {
  readonly radiusMm: number | null;
  readonly plusMinusMm: number | null;
}

export interface NoCutBasis {
  readonly from: null;
  /** Not yet: to be asked for again; else there is nothing to list. */
  readonly later: boolean;
  readonly hint: string;
}

/**
 * Chooses what the cut list of a sitting is made from: the stems placed on the plant where its views were joined and show depth,
 * else the photo that shows most of them.
 */
export async function cutBasis(
  services: Pick<Services, 'db' | 'stemsOfSitting'>,
  sittingId: string,
  views: readonly ViewRow[],
): Promise<CutBasis | NoCutBasis> {
  if (views.some(({ state }) => state === 'received' || state === 'measuring')) {
    return none('A photo of this sitting is still being measured. Try again in a moment.', true);
  }
  const joining = joiningOfSitting(services.db, sittingId);
  if (joining === null || joining.viewCount < 2) return onePhotoBasis(views, []);
  if (!joining.isCurrent || joining.state === 'measuring') {
    return none('The photos of this sitting are not joined yet. Try again in a moment.', true);
  }
  if (joining.report === null)
    return onePhotoBasis(views, ['The photos of this sitting could not be joined.']);
  return turned(services, joining, views);
}

async function turned(
  { db, stemsOfSitting }: Pick<Services, 'db' | 'stemsOfSitting'>,
  joining: SittingJoining,
  views: readonly ViewRow[],
): Promise<CutBasis | NoCutBasis> {
  const { sittingId, report } = joining;
  let placed = keptStems(db, joining);
  if (placed === null) {
    placed = await stemsOfSitting(sittingTask(viewsToJoin(db, sittingId)));
    keepStems(db, joining, placed);
  }
  const { stems, crown, notes } = placed;
  if (crown === null) return onePhotoBasis(views, notes);
  const hull = report?.plan.hull;
  const ball =
    hull?.radiusMm == null || hull.centreMm === null
      ? { radiusMm: crown.radius, centreMm: crown.centre }
      : { radiusMm: hull.radiusMm, centreMm: hull.centreMm };
  return {
    from: 'turned',
    viewIds: joining.viewIds ?? [],
    stems,
    present: { ...ball, plusMinusMm: leastSure(views) },
    unseen: [
      ...(report?.faults ?? []).map(
        ({ words }) => `${words} Until that is put right the places of the stems may be wrong.`,
      ),
      ...notes,
      'A stem that every view hides behind leaves or the pot is not seen: look between the leaves as you work round.',
    ],
  };
}

/** The photo that shows most long stems. */
export function onePhotoBasis(
  views: readonly ViewRow[],
  reasons: readonly string[],
): OnePhotoBasis | NoCutBasis {
  const measured = views.filter(({ report }) => report?.status === 'measured');
  const [first, ...others] = measured;
  if (first === undefined) {
    const hint = views.map(({ report }) => report?.hint).find((words) => words != null);
    return none(hint ?? 'No photo of this sitting could be measured. Photograph the plant again.', false);
  }
  const view = others.reduce((most, next) => (stemsIn(next) > stemsIn(most) ? next : most), first);
  const report = view.report as PhotoReport;
  return {
    from: 'one-photo',
    viewIds: [view.id],
    report,
    turnDeg: view.turnDeg,
    present: { radiusMm: report.ball?.radiusMm ?? null, plusMinusMm: report.ball?.radiusPlusMinusMm ?? null },
    unseen: [
      ...reasons,
      'One photo shows only the stems on its outline. What points to the camera or away from it, or lies behind leaves or the pot, is not seen: turn the pot and take more, best at 0, 45, 90 and 135 degrees.',
    ],
  };
}

function stemsIn({ report }: ViewRow): number {
  return report?.longStems.length ?? 0;
}

/** The doubt of a mean is that of its least sure view: the rim, which scales them all, is misread in all alike. */
function leastSure(views: readonly ViewRow[]): number | null {
  const doubts = views.flatMap(({ report }) => report?.ball?.radiusPlusMinusMm ?? []);
  return doubts.length === 0 ? null : Math.max(...doubts);
}

function none(hint: string, later: boolean): NoCutBasis {
  return { from: null, later, hint };
}
