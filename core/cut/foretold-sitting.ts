import { readSilhouette } from '../silhouette/silhouette.ts';
import { rimOfView } from '../stems/placed-tip.ts';
import { sightedSitting } from '../turned/join-views.ts';
import type { LopsidednessVector } from '../turned/lopsidedness-vector.ts';
import { placeAxis } from '../turned/place-axis.ts';
import type { TakenView } from '../turned/taken-view.ts';
import type { PlantPoint, TurnedView } from '../turned/turned-view.ts';
import { cutsInView, type PlacedCut } from './cuts-in-view.ts';
import { type ForetoldView, foretellView } from './foretold-view.ts';

/** A turned sitting as it would be after the chosen cuts. */
export interface ForetoldSitting {
  /** The measured views of known turn, in the order given. */
  readonly views: readonly ForetoldView[];
  /** Lopsidedness in the round; `null` where it cannot be told. */
  readonly lean: { readonly before: LopsidednessVector | null; readonly after: LopsidednessVector | null };
}

/**
 * Foretells every view of a turned sitting and its lopsidedness in the round.
 *
 * @param taken views as measured by themselves, in the order taken
 * @param options as the sitting was joined with
 * @param request cuts and the middle of the ball that they are cut to, mm; names of the cuts that are made
 * @returns `null` without a scale: then no stem has a place on the plant
 */
export function foretellSitting(
  taken: readonly TakenView[],
  options: { readonly cameraHeightMm: number | null },
  {
    cuts,
    centreMm,
    chosen,
  }: {
    readonly cuts: readonly PlacedCut[];
    readonly centreMm: PlantPoint;
    readonly chosen: ReadonlySet<string>;
  },
): ForetoldSitting | null {
  const { unit, sighted } = sightedSitting(taken, options);
  if (unit !== 'mm') return null;
  const turned: { readonly view: TurnedView; readonly foretold: ForetoldView }[] = [];
  for (const one of sighted) {
    const silhouette = one && readSilhouette(one.view.canopy);
    if (one === null || silhouette === null) continue;
    const { view, index } = one;
    const foretold = foretellView(
      {
        index,
        before: (taken[index] as TakenView).report,
        silhouette,
        rim: rimOfView(view),
        cuts: cutsInView(one, cuts, centreMm),
        toPhoto: view.toPhoto,
      },
      chosen,
    );
    turned.push({ view, foretold });
  }
  return {
    views: turned.map(({ foretold }) => foretold),
    lean: {
      before: vectorOf(turned.map(({ view }) => view)),
      after: vectorOf(turned.map(({ view, foretold }) => leaning(view, foretold))),
    },
  };
}

/** A view whose middle stands where it would after the cuts. */
function leaning(view: TurnedView, { before, after }: ForetoldView): TurnedView {
  if (before.lopsidedness === null || after.lopsidedness === null) return view;
  return {
    ...view,
    lopsidednessPercent: view.lopsidednessPercent + after.lopsidedness.percent - before.lopsidedness.percent,
    lopsidednessPlusMinus: Math.max(view.lopsidednessPlusMinus, after.lopsidedness.plusMinus),
  };
}

function vectorOf(views: readonly TurnedView[]): LopsidednessVector | null {
  const { lopsided } = placeAxis(views);
  return lopsided.ok ? lopsided.vector : null;
}
