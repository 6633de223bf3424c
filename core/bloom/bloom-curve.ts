import { addDays, type Day, daysBetween } from '../day/day.ts';
import { type Bloom, bloomShareOn, type ShareRange } from './bloom.ts';

/** One day of the curve as it is drawn. */
export interface BloomPoint extends ShareRange {
  readonly day: Day;
  /** After the newest reading. */
  readonly isForecast: boolean;
}

/** Each point weighs every plausible bloom: more of them would cost and not be seen. */
const MOST_POINTS = 40;

/**
 * The curve through a bloom's readings, sampled to be drawn.
 *
 * @param bloom as told from the sittings
 * @param lastsDays how long full bloom of the kind lasts
 * @returns evenly spaced days from the first reading until full bloom is likely over, the newest reading among them
 */
export function bloomCurve(
  bloom: Pick<Bloom, 'belief' | 'firstDay' | 'newestDay' | 'full' | 'fading'>,
  lastsDays: number,
): BloomPoint[] {
  const over = bloom.fading?.to90 ?? addDays(bloom.full.day, Math.round(lastsDays));
  const [, last] = [over, bloom.newestDay].sort() as [Day, Day];
  const stepDays = Math.max(1, Math.ceil(daysBetween(bloom.firstDay, last) / MOST_POINTS));
  const days = new Set<Day>([bloom.newestDay, last]);
  for (let day = bloom.firstDay; day < last; day = addDays(day, stepDays)) days.add(day);
  return [...days].sort().map((day) => ({
    day,
    ...bloomShareOn(bloom, daysBetween(bloom.firstDay, day)),
    isForecast: day > bloom.newestDay,
  }));
}
