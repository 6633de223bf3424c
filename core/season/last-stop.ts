import { addDays, type Day, daysBetween } from '../day/day.ts';
import { expectation, requirePositive } from '../errors/expect.ts';
import { chanceBelow, type NormalGamma, nextPoint } from './normal-gamma.ts';

/** Days are counted whole: day k stands for half a day before it to half a day after. */
const HALF_DAY = 0.5;

export interface LastStop {
  /** The latest day on which the chance of being late is at most the accepted one. */
  readonly lastDay: Day;
  /** First day of the window that ends with it. */
  readonly fromDay: Day;
  readonly daysBeforeShow: number;
  /** Of a stop on the last day. */
  readonly chanceLate: number;
}

/**
 * The day of the last stop: the latest at which the plant is late with at most the accepted chance.
 *
 * @param belief days from that stop to full bloom
 * @param showDay a plant whose full bloom begins after it is late
 * @param acceptedLate share of plants that may be late, above 0 and at most 0.5
 * @param windowDays days of the window, the last day included
 *
 * How: days before the show = the belief's quantile at 1 − accepted, rounded up to a whole day. Accepting a share a is the same as holding
 * a day late (1 − a) ÷ a times as bad as a day early: 9 times at 10 %.
 *
 * Notes: because days are whole the chance falls short of the accepted one by up to one day's worth.
 *
 * Reference: critical fractile, Arrow, Harris and Marschak (1951), Optimal inventory policy, Econometrica 19:250.
 *
 * Example: a mean of 64.8 days, worth 5 records, shape 4.5, rate 72.4, one in ten late: 71 days before the show.
 */
export function lastStop(
  belief: NormalGamma,
  { showDay, acceptedLate, windowDays }: { showDay: Day; acceptedLate: number; windowDays: number },
): LastStop {
  if (!(acceptedLate > 0 && acceptedLate <= 0.5)) {
    throw new RangeError(expectation('a share above 0 and at most 0.5', 'acceptedLate', acceptedLate));
  }
  requirePositive(windowDays, 'windowDays');
  const daysBeforeShow = Math.ceil(nextPoint(belief, 1 - acceptedLate) - HALF_DAY);
  const lastDay = addDays(showDay, -daysBeforeShow);
  return {
    lastDay,
    fromDay: addDays(lastDay, 1 - windowDays),
    daysBeforeShow,
    chanceLate: chanceLate(belief, lastDay, showDay),
  };
}

/** Chance that full bloom begins only after the show. */
export function chanceLate(belief: NormalGamma, stopDay: Day, showDay: Day): number {
  return 1 - begunBy(belief, stopDay, showDay);
}

/** Chance that full bloom has begun by a day, that day included. */
export function begunBy(belief: NormalGamma, stopDay: Day, on: Day): number {
  return chanceBelow(belief, daysBetween(stopDay, on) + HALF_DAY);
}
