import type { BallFit } from '../measures/ball.ts';
import { clockOf } from '../measures/clock.ts';
import type { PointPx } from '../raster/raster.ts';
import type { RimEnds } from '../silhouette/open-arc.ts';
import type { Loop } from '../silhouette/outline.ts';
import { crownOf } from './crown.ts';
import { type OutlineLobe, outlineLobes, SHOULDER_RAD } from './outline-lobes.ts';

/** A stem or shoulder outside the ball. Px of the working raster. */
export interface LongStemPx {
  readonly tipPx: PointPx;
  /** Where to cut: on the circle that the other tips reach. */
  readonly cutPx: PointPx;
  /** How far the tip stands beyond where the other tips end. */
  readonly excessPx: number;
  readonly clock: number;
  readonly kind: 'shoot' | 'shoulder';
  /** Along the stem from the rim plane to the tip, as the photo shows it; `null` where leaves hide the stem. */
  readonly lengthPx: number | null;
}

export interface LongStemOptions {
  /** How far the smoothed outline may leave the crown and still count as even, share of its radius. */
  readonly tolerance: number;
  /** Two tips with no valley so deep between them are one, share of the radius. */
  readonly valley: number;
  /** How far a tip must stand out to be worth a knife, share of the radius: a leaf that leans out is no stem. */
  readonly leastExcess: number;
  /** The same for a shoulder, which no single leaf makes. */
  readonly leastShoulder: number;
  /** The leaves of a long stem reach so far to its sides, share of the radius. */
  readonly besideStem: number;
  readonly shoulderRad: number;
}

/** Chosen on rendered plants that no figure is reported on. */
export const LONG_STEM_DEFAULTS: LongStemOptions = {
  tolerance: 0.03,
  valley: 0.04,
  leastExcess: 0.165,
  leastShoulder: 0.1,
  besideStem: 0.33,
  shoulderRad: SHOULDER_RAD,
};

/**
 * Long stems of one photo: lobes of the outline that stand out of the crown by more than single leaves do.
 *
 * @param outline outlines of all pieces of the canopy, px, and the pot rim's ends or `null`
 * @param ball the silhouette's ball, px
 * @param edgeUncertaintyPx one standard deviation of the outline's place; the tolerance is never below twice this
 * @returns the stems, longest first; `[]` when nothing stands out, or when too little of the outline is seen to say where the tips end
 *
 * Notes: a lobe within the reach of a longer stem's leaves is that stem's. A stem that points to or from the camera stands out by less than it is
 * long: several views tell (`matchStems`). What the pot hides or lies inside the outline is not seen.
 *
 * Reference: lobes of the 50-UPR profile after ISO 12181-2:2011; crown and figures are our own.
 *
 * Example: a disc of radius 100 with a bar to 140 at the top gives one shoot at 12, excess 40.
 */
export function longStems(
  { loops, rim }: { readonly loops: readonly Loop[]; readonly rim: RimEnds | null },
  ball: BallFit,
  edgeUncertaintyPx: number,
  options: LongStemOptions = LONG_STEM_DEFAULTS,
): LongStemPx[] {
  const crown = crownOf(loops, rim, { centre: ball.centrePx, radius: ball.radiusPx });
  if (crown === null) return [];
  const { profile, radius, centre } = crown;
  const lobes = outlineLobes(profile, {
    radiusPx: radius,
    tolerancePx: Math.max(options.tolerance * radius, 2 * edgeUncertaintyPx),
    valleyPx: options.valley * radius,
    shoulderRad: options.shoulderRad,
  });
  return withoutOwnLeaves(lobes, centre, options.besideStem * radius)
    .filter(({ excessPx, kind }) => excessPx >= radius * leastOf(kind, options))
    .map(({ tipPx, cutPx, excessPx, angleRad, kind }) => ({
      tipPx,
      cutPx,
      excessPx,
      clock: clockOf(angleRad),
      kind,
      lengthPx: null,
    }));
}

function leastOf(kind: OutlineLobe['kind'], { leastExcess, leastShoulder }: LongStemOptions): number {
  return kind === 'shoot' ? leastExcess : leastShoulder;
}

/** Lobes, longest first, without those beside the line of a longer one. */
function withoutOwnLeaves(lobes: readonly OutlineLobe[], [cx, cy]: PointPx, besidePx: number): OutlineLobe[] {
  const kept: OutlineLobe[] = [];
  for (const lobe of [...lobes].sort((a, b) => b.excessPx - a.excessPx)) {
    const [x, y] = [lobe.tipPx[0] - cx, lobe.tipPx[1] - cy];
    const isLeafOf = ({ angleRad }: OutlineLobe) => {
      const [cos, sin] = [Math.cos(angleRad), Math.sin(angleRad)];
      return x * cos + y * sin > 0 && Math.abs(y * cos - x * sin) < besidePx;
    };
    if (!kept.some(isLeafOf)) kept.push(lobe);
  }
  return kept;
}
