import type { LogBell } from '../growth/expected-growth.ts';
import type { ExpectedBloom } from './expected-bloom.ts';

/** A net of blooms: day of the half, logarithms of rise, time in full bloom and share. */
const AXES = ['half', 'logRise', 'logLasts', 'logShare'] as const;
export type BloomNet = Readonly<Record<(typeof AXES)[number], readonly number[]>>;
/** A place in it. */
export type BloomKnot = Readonly<Record<keyof BloomNet, number>>;
/**
 * Fewer ways to last (5, the first time 3) missed the fall of a bloom and put its full up to a week late: within four days in 80 instead of 95 of 100
 * simulated blooms.
 */
const KNOTS = { half: 17, logRise: 11, logLasts: 9, logShare: 11 } as const;
/** The first net takes a day in five as the half; the next ones are drawn in to what counted. */
const FIRST_STEP_DAYS = 5;
const FIRST_KNOTS = { logLasts: 7, logShare: 7 } as const;
/** What is expected counts up to so many standard deviations. */
const MOST_SDS = 2.5;
const MOST_LOG_SHARE = Math.log(0.95);
/** Days before the first and after the last reading between which half of the bloom may be open. */
const REACH_DAYS = { before: 40, after: 80 };
/** A coarse net over all that may be, for readings of which the last is so many days after the first. */
export function firstNet(lastDays: number, expected: ExpectedBloom): BloomNet {
  const across = ({ mean, sd }: LogBell, count: number, most = Number.POSITIVE_INFINITY) =>
    evenly(mean - MOST_SDS * sd, Math.min(most, mean + MOST_SDS * sd), count);
  const spanDays = REACH_DAYS.before + lastDays + REACH_DAYS.after;
  return {
    half: evenly(-REACH_DAYS.before, lastDays + REACH_DAYS.after, Math.ceil(spanDays / FIRST_STEP_DAYS)),
    logRise: across(expected.logRiseDays, KNOTS.logRise),
    logLasts: across(expected.logLastsDays, FIRST_KNOTS.logLasts),
    logShare: across(expected.logFullShare, FIRST_KNOTS.logShare, MOST_LOG_SHARE),
  };
}

/** A finer net over what counted, one mesh wider on each side, within the old one's ends. */
export function drawnIn(net: BloomNet, counting: readonly { readonly at: BloomKnot }[]): BloomNet {
  const drawn = AXES.map((axis) => {
    const knots = net[axis];
    const [first, last] = [knots[0] as number, knots.at(-1) as number];
    const mesh = (last - first) / (knots.length - 1);
    let [from, to] = [last, first];
    for (const { at } of counting) {
      from = Math.min(from, at[axis]);
      to = Math.max(to, at[axis]);
    }
    return [axis, evenly(Math.max(first, from - mesh), Math.min(last, to + mesh), KNOTS[axis])];
  });
  return Object.fromEntries(drawn) as unknown as BloomNet;
}

function evenly(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, k) => from + (k * (to - from)) / (count - 1));
}
