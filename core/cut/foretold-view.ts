import { sidedLopsidedness } from '../measures/lopsidedness.ts';
import type { PointPx } from '../raster/raster.ts';
import type { Lopsidedness, Score } from '../report.ts';
import type { RimEnds } from '../silhouette/open-arc.ts';
import { reduceOutline } from '../silhouette/reduce-outline.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';
import { afterCuts } from './after-cuts.ts';
import type { CutInView } from './cuts-in-view.ts';
import { type ShapeScores, sittingScores } from './shape-scores.ts';

/** One photo as it would be after the chosen cuts. Px of the photo as stored upright. */
export interface ForetoldView {
  /** The view's place in the list as given, from 0. */
  readonly index: number;
  /** Whether it shows a stem that is cut. */
  readonly isCut: boolean;
  /** As its report has them. */
  readonly before: ShapeScores;
  readonly after: ShapeScores;
  /** Closed; `[]` when nothing would be left. */
  readonly outlinePx: readonly PointPx[];
  /** The cuts that it shows, chosen or not. */
  readonly marks: readonly { readonly id: string; readonly tipPx: PointPx; readonly cutPx: PointPx }[];
}

export interface ViewToForetell {
  readonly index: number;
  readonly before: ShapeScores;
  /** Px of the view's mask, as its rim and cuts. */
  readonly silhouette: Silhouette;
  readonly rim: RimEnds | null;
  readonly cuts: readonly CutInView[];
  readonly toPhoto: (placePx: PointPx) => PointPx;
}

/**
 * How well scores are foretold: half-width of the middle 95 % of what came out less what was foretold, of one view and of the mean of a sitting's, on rendered plants whose
 * cuts were carried out (`tests/core/stems/figures.ts worked`).
 */
export const FORETOLD_95 = {
  view: { roundness: 9, symmetry: 1.4, lopsidedness: 1.8 },
  sitting: { roundness: 5.8, symmetry: 0.6 },
} as const;

/** Points of the outline handed on: enough for a drawing as wide as a screen. */
const MOST_OUTLINE_POINTS = 600;

/**
 * Foretells one view: its scores and its outline after the chosen cuts.
 *
 * @param view px of its mask
 * @param chosen names of the cuts that are made
 * @returns the report's scores with the change added; a plus-minus holds the photo's own repeatability and how well such changes are foretold
 */
export function foretellView(view: ViewToForetell, chosen: ReadonlySet<string>): ForetoldView {
  const { index, before, silhouette, rim, cuts, toPhoto } = view;
  const { silhouette: left, change, shown } = afterCuts({ silhouette, rim }, cuts, chosen);
  const isCut = cuts.some(({ id }) => chosen.has(id) && shown.has(id));
  const doubt = (score: keyof ShapeScores, plusMinus: number) =>
    Math.hypot(plusMinus, isCut ? FORETOLD_95.view[score] : 0);
  return {
    index,
    isCut,
    before,
    after: {
      roundness: changed(before.roundness, change.roundness, (own) => doubt('roundness', own)),
      symmetry: changed(before.symmetry, change.symmetry, (own) => doubt('symmetry', own)),
      lopsidedness: leaning(before.lopsidedness, change.lopsidedness, (own) => doubt('lopsidedness', own)),
    },
    outlinePx: reduceOutline(left?.loops[0] ?? [], MOST_OUTLINE_POINTS).map(toPhoto),
    marks: cuts
      .filter(({ id }) => shown.has(id))
      .map(({ id, tipPx, cutPx }) => ({ id, tipPx: toPhoto(tipPx), cutPx: toPhoto(cutPx) })),
  };
}

function changed(score: Score | null, change: number | null, doubt: (own: number) => number): Score | null {
  if (score === null || change === null) return null;
  return {
    score: Math.max(0, Math.min(100, score.score + change)),
    plusMinus: doubt(score.plusMinus),
  };
}

function leaning(
  before: Lopsidedness | null,
  change: number | null,
  doubt: (own: number) => number,
): Lopsidedness | null {
  if (before === null || change === null) return null;
  return sidedLopsidedness(before.percent + change, doubt(before.plusMinus));
}

/** The scores of a sitting after the cuts: of one photo its own, of several the means, whose errors cancel in part. */
export function scoresAfter(views: readonly ForetoldView[]): ShapeScores {
  const after = sittingScores(views.map((view) => view.after));
  if (views.length < 2) return after;
  const before = sittingScores(views.map((view) => view.before));
  const isCut = views.some((view) => view.isCut);
  const doubted = (score: keyof (typeof FORETOLD_95)['sitting']): Score | null => {
    const [mean, own] = [after[score], before[score]];
    if (mean === null || own === null) return null;
    const foretold = isCut ? FORETOLD_95.sitting[score] : 0;
    return { score: mean.score, plusMinus: Math.hypot(own.plusMinus, foretold) };
  };
  return { ...after, roundness: doubted('roundness'), symmetry: doubted('symmetry') };
}
