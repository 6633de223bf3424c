import type { SittingReports } from '../../core/advice/plant-history.ts';
import { growthRates, sizePoints } from '../../core/vigour/growth-rates.ts';
import { growthRateWords } from '../../core/vigour/growth-words.ts';
import type { GrowthNow } from '../schemas/condition.ts';
import type { Stop } from '../schemas/sitting.ts';

/**
 * Height, width and area at each sitting and what they grow by a week since the last stop.
 *
 * @param sittings oldest first
 */
export function growthAnswer(sittings: readonly SittingReports[], stops: readonly Stop[]): GrowthNow | null {
  if (!sittings.some(({ reports }) => reports.some(({ status }) => status === 'measured'))) return null;
  const points = sizePoints(sittings);
  const stopDays = stops.map(({ day }) => day).sort();
  const rates = growthRates(points, stopDays);
  return { points, stops: stopDays, rates, words: growthRateWords(rates) };
}
