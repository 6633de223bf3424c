import { isDarkAt, type RingKind } from './ring-kinds.ts';

/** Widths of blur tried, in ring units (standard deviation). */
const BLURS_UNITS = [0.08, 0.2, 0.35, 0.5, 0.65, 0.8] as const;

/**
 * How much the light along a mark's mean ray looks like one kind of mark, through whatever blur fits best.
 *
 * @param ray light from the middle outwards
 * @param perUnit samples to a ring unit
 * @returns correlation, −1 to 1; 1 is the kind itself
 *
 * Notes: the blur is along the ray only, which near the middle differs a little from the lens's blur on the plane.
 */
export function ringLikeness(ray: Float32Array, perUnit: number, kind: RingKind): number {
  let best = -1;
  for (const blur of BLURS_UNITS)
    best = Math.max(best, correlation(ray, blurredKind(kind, ray.length, perUnit, blur)));
  return best;
}

function blurredKind(kind: RingKind, length: number, perUnit: number, blurUnits: number): Float32Array {
  const sigma = blurUnits * perUnit;
  const reach = Math.ceil(3 * sigma);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, k) =>
    Math.exp(-((k - reach) ** 2) / (2 * sigma ** 2)),
  );
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return Float32Array.from({ length }, (_, s) => {
    let light = 0;
    for (let k = -reach; k <= reach; k++) {
      if (!isDarkAt(kind, Math.abs(s + k + 0.5) / perUnit)) light += weights[k + reach] as number;
    }
    return light / sum;
  });
}

function correlation(one: Float32Array, other: Float32Array): number {
  const [meanOne, meanOther] = [mean(one), mean(other)];
  let [product, squareOne, squareOther] = [0, 0, 0];
  for (let k = 0; k < one.length; k++) {
    const [a, b] = [(one[k] as number) - meanOne, (other[k] as number) - meanOther];
    product += a * b;
    squareOne += a * a;
    squareOther += b * b;
  }
  return squareOne > 0 && squareOther > 0 ? product / Math.sqrt(squareOne * squareOther) : -1;
}

function mean(values: Float32Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}
