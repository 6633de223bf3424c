import { requirePositive } from '../errors/expect.ts';
import type { RadialProfile } from '../silhouette/radial-profile.ts';

/** Cut-off for form: what remains is the shape of the whole plant. */
export const FORM_UPR = 15;
/** Cut-off for shoots: what remains shows single shoots but not single leaf tips. */
export const SHOOT_UPR = 50;

/** α of ISO 16610-21: makes the filter pass one half at the cut-off. */
const ALPHA = Math.sqrt(Math.LN2 / Math.PI);

/**
 * Smooths a roundness profile with the Gaussian profile filter.
 *
 * @param profile radii in px over the open arc
 * @param cutoffUpr undulations per revolution of which one half passes, above 0
 * @returns the profile with smoothed radii, same directions
 *
 * Notes: weights s(x) = exp(−π (x / (α λc))²), λc = 360° ÷ cut-off, cut at ±λc (weight below 1e-6). On a whole
 * circle the profile wraps round. Towards the ends of an open arc plain weights would pull the value to one
 * side, so a straight line is fitted with the same weights (linear regression form): away from the ends it is the same filter
 * exactly, at the ends a level or sloping profile comes back as it was. A bent one is off there by three quarters of what
 * the filter takes off it anywhere, the other way: at 15, 0.0023 of the second derivative by angle, so 0.2 % of the
 * distance by which a circle stands off centre. Single leaves at the very ends are damped less, 2.5 times the noise of the
 * middle. Passes 2^−(f/cutoff)² of f undulations: 98.8 % of an
 * oval (2) and 93 % of a five-lobed form at 15.
 *
 * Reference: ISO 16610-21:2011 (Gaussian filter), ISO 12181-2:2011 (cut-offs 15 and 50 UPR), ISO 16610-28:2016
 * (end effects).
 *
 * Example: a profile of 15 undulations of 1 px comes back with 0.5 px.
 */
export function smoothProfile(profile: RadialProfile, cutoffUpr: number): RadialProfile {
  requirePositive(cutoffUpr, 'cutoffUpr');
  const { radiiPx, closed, stepRad } = profile;
  const weights = gaussianWeights(cutoffUpr, stepRad);
  const reach = weights.length - 1;
  const count = radiiPx.length;
  const smoothed = new Float64Array(count);

  for (let at = 0; at < count; at++) {
    // Weighted sums for the straight line's value at the middle; offsets are in steps.
    let sum = 0;
    let sumOffset = 0;
    let sumOffset2 = 0;
    let sumRadius = 0;
    let sumOffsetRadius = 0;
    const first = closed ? -reach : Math.max(-reach, -at);
    const last = closed ? reach : Math.min(reach, count - 1 - at);
    let index = (((at + first) % count) + count) % count;
    for (let offset = first; offset <= last; offset++, index++) {
      if (index === count) index = 0;
      const weight = weights[offset < 0 ? -offset : offset] as number;
      const radius = radiiPx[index] as number;
      sum += weight;
      sumOffset += weight * offset;
      sumOffset2 += weight * offset * offset;
      sumRadius += weight * radius;
      sumOffsetRadius += weight * offset * radius;
    }
    const spread = sum * sumOffset2 - sumOffset * sumOffset;
    smoothed[at] =
      spread > 0 ? (sumOffset2 * sumRadius - sumOffset * sumOffsetRadius) / spread : sumRadius / sum;
  }
  return { ...profile, radiiPx: smoothed };
}

/** One side of the bell: weight by distance in steps, from the middle outwards. */
function gaussianWeights(cutoffUpr: number, stepRad: number): Float64Array {
  const cutoffRad = (2 * Math.PI) / cutoffUpr;
  const reach = Math.max(1, Math.ceil(cutoffRad / stepRad));
  return Float64Array.from({ length: reach + 1 }, (_, offset) =>
    Math.exp(-Math.PI * ((offset * stepRad) / (ALPHA * cutoffRad)) ** 2),
  );
}
