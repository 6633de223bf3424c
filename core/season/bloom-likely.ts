import { addDays, type Day } from '../day/day.ts';
import { begunBy } from './last-stop.ts';
import { type NormalGamma, nextPoint } from './normal-gamma.ts';

/** Chance that the plant is in full bloom on a day: it has begun, and did not begin so long ago that it is over. */
export function chanceInBloom(belief: NormalGamma, stopDay: Day, lastsDays: number, on: Day): number {
  return begunBy(belief, stopDay, on) - begunBy(belief, stopDay, addDays(on, -lastsDays));
}

/** First and last day between which full bloom begins with the given chance, as likely before as after. */
export function bloomBegins(
  belief: NormalGamma,
  stopDay: Day,
  chance: number,
): readonly [from: Day, to: Day] {
  const tail = (1 - chance) / 2;
  return [
    addDays(stopDay, Math.round(nextPoint(belief, tail))),
    addDays(stopDay, Math.round(nextPoint(belief, 1 - tail))),
  ];
}

/** The chance to be in full bloom on one day of the calendar. */
export interface BloomDay {
  readonly day: Day;
  readonly chance: number;
}

/** A day on which the plant is hardly in bloom is not drawn. */
const LEAST_DRAWN = 0.01;

/** Day by day, how likely the plant is in full bloom: the picture beside the plan. */
export function bloomPicture(belief: NormalGamma, stopDay: Day, lastsDays: number): BloomDay[] {
  const lastDrawn = Math.ceil(nextPoint(belief, 1 - LEAST_DRAWN)) + lastsDays;
  return Array.from({ length: Math.max(0, lastDrawn) }, (_, k) => addDays(stopDay, k + 1))
    .map((day) => ({ day, chance: chanceInBloom(belief, stopDay, lastsDays, day) }))
    .filter(({ chance }) => chance >= LEAST_DRAWN);
}
