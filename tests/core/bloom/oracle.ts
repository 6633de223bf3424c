import type { BloomReading } from '../../../core/bloom/bloom-readings.ts';
import { BLOOM_GUESS } from '../../../core/bloom/expected-bloom.ts';
import { daysBetween } from '../../../core/day/day.ts';
import { FIRST_DAY, type SimulatedBloom } from './simulated-blooms.ts';

const STEP_DAYS = 0.5;
const MOST_DAYS = 60;
/** Where no plus-minus is stated, one standard deviation; as the simulation draws it. */
const UNTOLD = 0.02;
/** Shares of the full bloom that nothing is known of, evenly in the logarithm from a third to three times the guess. */
const SHARES = Array.from({ length: 25 }, (_, k) => BLOOM_GUESS.fullShare * 3 ** ((k - 12) / 12));

/**
 * Days off of full bloom by one who knows the true curve and has only to lay it over the readings: no estimator does better.
 *
 * @param knows 'all' but the day; or 'pace', when how much of the canopy full bloom covers is not known either
 * @returns median of what agrees with the readings, days after the truth
 */
export function oracleOff(
  readings: readonly BloomReading[],
  { trueShare, full, fading }: SimulatedBloom,
  knows: 'all' | 'pace',
): number {
  const most = trueShare((full + Math.max(full, fading)) / 2);
  const factors = knows === 'all' ? [1] : SHARES.map((share) => share / most);
  const shifts: { days: number; log: number }[] = [];
  for (let days = -MOST_DAYS; days <= MOST_DAYS; days += STEP_DAYS) {
    for (const factor of factors) {
      const log = readings.reduce((sum, { day, share, plusMinus }) => {
        const sd = plusMinus === null ? UNTOLD : plusMinus / 1.96;
        return sum - ((share - factor * trueShare(daysBetween(FIRST_DAY, day) - days)) / sd) ** 2 / 2;
      }, 0);
      shifts.push({ days, log });
    }
  }
  const best = Math.max(...shifts.map(({ log }) => log));
  const weights = shifts.map(({ log }) => Math.exp(log - best));
  const half = weights.reduce((sum, weight) => sum + weight, 0) / 2;
  let below = 0;
  const at = weights.findIndex((weight) => {
    below += weight;
    return below >= half;
  });
  return (shifts[at] as { days: number }).days;
}
