import { profilePoints } from '../silhouette/radial-profile.ts';
import type { Silhouette } from '../silhouette/silhouette.ts';
import { areaRoundness } from './area-roundness.ts';
import type { BallFit } from './ball.ts';
import { bestAxis } from './best-axis.ts';
import { croftonPerimeter, formFactor } from './crofton-perimeter.ts';
import { deviationsOf } from './deviations.ts';
import { areaInside, largestInnerCircle, largestRing } from './inscribed-circle.ts';
import { minimumCircumscribedCircle } from './minimum-circumscribed-circle.ts';

/**
 * Measures beside the scores: other ways in use to say how round and how upright a silhouette is. No advice rests on
 * them.
 */
export interface Extras {
  /** Form factor 4πA ÷ P² with Crofton's perimeter, gaps filled, above 0; 1 for a disc (as drawn, 0.99–1.00). */
  readonly circularityCrofton: number;
  /** Area ÷ area of the circumscribed circle, above 0 and at most 1; the square of Wadell's circularity. */
  readonly areaRoundness: number;
  /** Radius of the smallest circle round the whole silhouette, long stems and all. */
  readonly circumscribedRadiusPx: number;
  readonly circumscribedRadiusMm: number | null;
  /** Radius of the largest circle inside the silhouette, gaps filled. */
  readonly inscribedRadiusPx: number;
  readonly inscribedRadiusMm: number | null;
  /** Lean of the line through the rim's middle about which the canopy is most symmetric, right positive; `null` without a pot. */
  readonly bestAxisTiltDeg: number | null;
  /** Mirror symmetry about that line, 0–100, never below the symmetry about the upright; `null` without a pot. */
  readonly bestAxisSymmetry: number | null;
  /** Departures of the form profile from its own least-squares circle; `null` without a ball. */
  readonly deviations: Deviations | null;
}

/** Roundness deviations as ISO 12181-1 names them, px. */
export interface Deviations {
  /** RONt, peak to valley. */
  readonly peakToValleyPx: number;
  /** RONp, highest peak. */
  readonly peakPx: number;
  /** RONv, deepest valley, as a length. */
  readonly valleyPx: number;
  /** RONq, root mean square. */
  readonly rootMeanSquarePx: number;
}

/** The extras before a scale is known, px of the working raster. */
export type ExtrasPx = Omit<Extras, 'circumscribedRadiusMm' | 'inscribedRadiusMm'>;

/** What of the other measures the extras rest on. */
export interface MeasuredBeside {
  readonly axis: { readonly xPx: number; readonly rimYPx: number } | null;
  readonly ball: BallFit | null;
  /** Symmetry about the upright axis, 0–100. */
  readonly symmetry: number | null;
}

/** The inscribed radius is sought to this share of the circumscribed one. */
const INSCRIBED_PRECISION = 0.001;

/**
 * Takes the extras of a silhouette.
 *
 * @param silhouette px
 * @param beside axis, ball and symmetry of the same silhouette, px
 * @returns px and ratios; each has its definition, range and bias at its own function
 */
export function extrasOf(silhouette: Silhouette, { axis, ball, symmetry }: MeasuredBeside): ExtrasPx | null {
  const { loops, filled, filledAreaPx } = silhouette;
  const largest = largestRing(loops);
  const { radius } = minimumCircumscribedCircle(loops.flat());
  if (largest === null || !(largest.area > 0 && radius > 0)) return null;
  const best = axis === null ? null : bestAxis(silhouette.mask, [axis.xPx, axis.rimYPx]);
  return {
    circularityCrofton: formFactor(filledAreaPx, croftonPerimeter(filled)),
    areaRoundness: areaRoundness(
      loops.reduce((sum, loop) => sum + areaInside(loop), 0),
      radius,
    ),
    circumscribedRadiusPx: radius,
    inscribedRadiusPx: largestInnerCircle([largest.ring], INSCRIBED_PRECISION * radius).radius,
    bestAxisTiltDeg: best?.tiltDeg ?? null,
    // At lean 0 both are one figure, but the score counts parts of pixels.
    bestAxisSymmetry: best === null || symmetry === null ? null : Math.max(best.symmetry, symmetry),
    deviations: ball === null ? null : deviationsOf(profilePoints(ball.form)),
  };
}
