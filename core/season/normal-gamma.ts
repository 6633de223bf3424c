import { requireFinite, requirePositive } from '../errors/expect.ts';
import { studentBelow, studentPoint } from '../growth/student-t.ts';

/** Belief about values that scatter normally about a mean, both mean and scatter unknown. */
export interface NormalGamma {
  /** What the mean is held to be, in the values' unit. */
  readonly mean: number;
  /** How many values that is worth (κ). */
  readonly count: number;
  /** α and β of the gamma distribution of 1 ÷ scatter². */
  readonly shape: number;
  readonly rate: number;
}

/**
 * What is believed once values were seen.
 *
 * @param belief before; `count`, `shape` and `rate` above 0
 * @param values seen; none leaves the belief as it is
 * @param weight what one value counts as, above 0; below 1 for values of something only alike (a power prior)
 *
 * How: with n values of mean x̄, κ′ = κ + n, m′ = (κm + n x̄) ÷ κ′, α′ = α + n ÷ 2, β′ = β + ½ Σ(x − x̄)² + κ n (x̄ − m)² ÷ 2κ′;
 * a weight multiplies n and the sum.
 *
 * Reference: Murphy (2007), Conjugate Bayesian analysis of the Gaussian distribution, section 3; DeGroot (1970), Optimal Statistical
 * Decisions, 9.6; weights: Ibrahim and Chen (2000), Power prior distributions for regression models.
 *
 * Example: mean 60, count 2, shape 3, rate 30 and the values 66, 70, 68 give 64.8, 5, 4.5 and 72.4.
 */
export function updated(belief: NormalGamma, values: readonly number[], weight = 1): NormalGamma {
  requirePositive(weight, 'weight');
  if (values.length === 0) return belief;
  for (const value of values) requireFinite(value, 'value');
  const n = weight * values.length;
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const squares = weight * values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  const count = belief.count + n;
  return {
    mean: (belief.count * belief.mean + n * mean) / count,
    count,
    shape: belief.shape + n / 2,
    rate: belief.rate + squares / 2 + (belief.count * n * (mean - belief.mean) ** 2) / (2 * count),
  };
}

/**
 * Chance that the next value lies below `value`: Student's t with 2α degrees of freedom about the mean, scale² = β(κ + 1) ÷ ακ.
 *
 * Notes: degrees of freedom that are no whole number (weights) are rounded down, which makes the tails a little wider.
 */
export function chanceBelow(belief: NormalGamma, value: number): number {
  return studentBelow((value - belief.mean) / nextScale(belief), freedomOf(belief));
}

/** The value that the next one stays below with the given chance, above 0 and below 1. */
export function nextPoint(belief: NormalGamma, chance: number): number {
  return belief.mean + nextScale(belief) * studentPoint(chance, freedomOf(belief));
}

/** Interval that holds the true mean with the given chance: Student's t, scale² = β ÷ ακ. */
export function meanInterval(belief: NormalGamma, chance: number): readonly [low: number, high: number] {
  const { mean, count, shape, rate } = belief;
  const reach = Math.sqrt(rate / (shape * count)) * studentPoint((1 + chance) / 2, freedomOf(belief));
  return [mean - reach, mean + reach];
}

function nextScale({ count, shape, rate }: NormalGamma): number {
  return Math.sqrt((rate * (count + 1)) / (shape * count));
}

function freedomOf({ shape }: NormalGamma): number {
  // The small share keeps 2 × 4.5 from being read as 8.
  return Math.max(1, Math.floor(2 * shape + 1e-9));
}
