import { requireAtLeast } from '../errors/expect.ts';
import { chanceOfAtLeast } from './kendall-distribution.ts';
import { normalTail } from './normal-tail.ts';

/** Up to this many values the exact distribution is used. */
export const MOST_EXACT = 10;

/** What the test found. */
export interface MannKendall {
  /** Rising pairs less falling pairs. */
  readonly s: number;
  /** Variance of S by chance alone, ties allowed for. */
  readonly variance: number;
  /** S ÷ number of pairs (tau-a), −1 to 1. */
  readonly tau: number;
  /** S, drawn in by one for continuity, in standard deviations; 0 when all values are equal. */
  readonly z: number;
  /** Two-sided. */
  readonly p: number;
  readonly method: 'exact' | 'normal';
}

/**
 * Mann–Kendall test for a trend: whether later values tend to be higher (or lower) than earlier ones.
 *
 * @param values at least two, oldest first, any unit
 * @returns S, its variance, tau and the two-sided p, 0–1
 *
 * Notes: asks for the order only, so a single wild value does little. Up to ten values p is exact, with ties too; above,
 * the normal distribution with corrections for ties and continuity. The values are taken as independent: weekly photos of one
 * plant are only roughly so, which makes p somewhat too small.
 *
 * Reference: Mann (1945), Nonparametric tests against trend; Kendall (1975), Rank Correlation Methods; Gilbert (1987),
 * Statistical Methods for Environmental Pollution Monitoring, ch. 16.
 *
 * Example: [100, 50, 85, 75, 50] has S = −5.
 */
export function mannKendall(values: readonly number[]): MannKendall {
  requireAtLeast(values.length, 2, 'values.length');
  const count = values.length;
  const groups = tieGroups(values);
  const s = kendallS(values);
  const spread = (n: number) => n * (n - 1) * (2 * n + 5);
  const variance = (spread(count) - groups.reduce((sum, group) => sum + spread(group), 0)) / 18;
  const tau = s / ((count * (count - 1)) / 2);
  const z = variance > 0 ? (s - Math.sign(s)) / Math.sqrt(variance) : 0;
  const method = count <= MOST_EXACT ? 'exact' : 'normal';
  // At S = 0 both sides overlap, hence the bound.
  const oneSided = method === 'exact' ? chanceOfAtLeast(Math.abs(s), groups) : normalTail(Math.abs(z));
  return { s, variance, tau, z, p: Math.min(1, 2 * oneSided), method };
}

function kendallS(values: readonly number[]): number {
  let s = 0;
  for (let later = 1; later < values.length; later++) {
    for (let earlier = 0; earlier < later; earlier++) {
      s += Math.sign((values[later] as number) - (values[earlier] as number));
    }
  }
  return s;
}

/** How many values share each value. */
function tieGroups(values: readonly number[]): number[] {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts.values()];
}
