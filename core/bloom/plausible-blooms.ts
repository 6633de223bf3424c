import { requireAtLeast } from '../errors/expect.ts';
import type { LogBell } from '../growth/expected-growth.ts';
import { type BloomForm, openingOf } from './bloom-form.ts';
import type { TimedShare } from './bloom-readings.ts';
import type { ExpectedBloom } from './expected-bloom.ts';

/** A bloom that agrees with the readings. */
export interface PlausibleBloom {
  readonly form: BloomForm;
  /** Share of the canopy in flower at full bloom. */
  readonly fullShare: number;
  /** Share of belief, all together 1. */
  readonly weight: number;
}

/** A net of blooms: day of the half, logarithms of rise, time in full bloom and share. */
const AXES = ['half', 'logRise', 'logLasts', 'logShare'] as const;
type Net = Readonly<Record<(typeof AXES)[number], readonly number[]>>;
const KNOTS = { half: 19, logRise: 9, logLasts: 5, logShare: 11 } as const;
/** The first net takes a day in five as the half; the next ones are drawn in to what counted. */
const FIRST_STEP_DAYS = 5;
const FIRST_KNOTS = { logLasts: 3, logShare: 7 } as const;
const MOST_DRAWS = 4;
/** What is expected counts up to so many standard deviations. */
const MOST_SDS = 2.5;
/** A bloom mostly goes more slowly than it comes, but may go faster. */
const FALLS_OF_RISE = [0.8, 1.6];
const MOST_LOG_SHARE = Math.log(0.95);
/** Days before the first and after the last reading between which half of the bloom may be open. */
const REACH_DAYS = { before: 40, after: 80 };
/** So far below the best in logarithm, a bloom no longer counts. */
const NEGLIGIBLE = 9;
/** Numbers that the readings fix: half, rise, share. */
const FITTED_NUMBERS = 3;

/**
 * Every bloom that agrees with the readings, weighted by how well it does and by what was expected.
 *
 * @param readings at least one, the first on day 0
 * @param expected how much, how fast and how long it was expected to bloom
 *
 * How: Bayes' rule on a net of blooms that is drawn in round what counts, with no chance in it; every day may be the half, all alike
 * beforehand. The readings' own plus-minus is taken at its word unless even the best bloom misses them by more: then all count as
 * sure as they scatter about it (Birge's ratio). They never count as surer than stated, because the many readings of 0 before any colour
 * would say so wrongly.
 *
 * Notes: slopes at the best fit would give symmetric intervals; in the first weeks of colour, where a small bloom near its full cannot be
 * told from the start of a large one, they are not.
 *
 * Reference: Birge (1932), The calculation of errors by the method of least squares, Phys. Rev. 40:207; net as `plausibleCurves`.
 */
export function plausibleBlooms(readings: readonly TimedShare[], expected: ExpectedBloom): PlausibleBloom[] {
  requireAtLeast(readings.length, 1, 'readings');
  let net = firstNet(readings, expected);
  for (let draw = 1; draw < MOST_DRAWS; draw++) net = drawnIn(net, knotsThatCount(net, readings, expected));
  const counting = knotsThatCount(net, readings, expected);
  const best = Math.max(...counting.map(({ log }) => log));
  const sum = counting.reduce((total, { log }) => total + Math.exp(log - best), 0);
  return counting.map(({ form, fullShare, log }) => ({
    form,
    fullShare,
    weight: Math.exp(log - best) / sum,
  }));
}

/** A knot of the net, with its place on each axis. */
interface Knot {
  readonly form: BloomForm;
  readonly fullShare: number;
  /** Logarithm of its weight, up to one constant. */
  readonly log: number;
  readonly at: Readonly<Record<keyof Net, number>>;
}

function knotsThatCount(net: Net, readings: readonly TimedShare[], expected: ExpectedBloom): Knot[] {
  const seen = knotsOf(net, readings, expected);
  const least = seen.reduce((low, { misfit }) => Math.min(low, misfit), Number.POSITIVE_INFINITY);
  const scatter = Math.max(1, least / Math.max(1, readings.length - FITTED_NUMBERS));
  const logOf = ({ before, misfit }: SeenKnot) => before - misfit / 2 / scatter;
  const best = seen.reduce((most, knot) => Math.max(most, logOf(knot)), Number.NEGATIVE_INFINITY);
  return seen
    .filter((knot) => logOf(knot) > best - NEGLIGIBLE)
    .map((knot) => ({ ...knot, log: logOf(knot) }));
}

interface SeenKnot extends Omit<Knot, 'log'> {
  readonly misfit: number;
  /** Logarithm of what was held of it before. */
  readonly before: number;
}

/** Every knot with its misfit: the readings' squared distances in standard deviations, a parabola in the share. */
function knotsOf(net: Net, readings: readonly TimedShare[], expected: ExpectedBloom): SeenKnot[] {
  const seen: SeenKnot[] = [];
  for (const half of net.half) {
    for (const logRise of net.logRise) {
      for (const logLasts of net.logLasts) {
        for (const fall of FALLS_OF_RISE) {
          const riseDays = Math.exp(logRise);
          const form = {
            halfDays: half,
            riseDays,
            lastsDays: Math.exp(logLasts),
            fallDays: fall * riseDays,
          };
          const open = openingOf(form);
          let [squares, products, rest] = [0, 0, 0];
          for (const { days, share, sd } of readings) {
            const opened = open(days) / sd;
            squares += opened * opened;
            products += (opened * share) / sd;
            rest += (share / sd) ** 2;
          }
          const paced = logBell(expected.logRiseDays, logRise) + logBell(expected.logLastsDays, logLasts);
          for (const logShare of net.logShare) {
            const fullShare = Math.exp(logShare);
            seen.push({
              form,
              fullShare,
              misfit: rest - 2 * fullShare * products + fullShare * fullShare * squares,
              before: paced + logBell(expected.logFullShare, logShare),
              at: { half, logRise, logLasts, logShare },
            });
          }
        }
      }
    }
  }
  return seen;
}

function firstNet(readings: readonly TimedShare[], expected: ExpectedBloom): Net {
  const lastDays = readings.reduce((last, { days }) => Math.max(last, days), 0);
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
function drawnIn(net: Net, counting: readonly Knot[]): Net {
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
  return Object.fromEntries(drawn) as unknown as Net;
}

function evenly(from: number, to: number, count: number): number[] {
  return Array.from({ length: count }, (_, k) => from + (k * (to - from)) / (count - 1));
}

function logBell({ mean, sd }: LogBell, value: number): number {
  return -(((value - mean) / sd) ** 2) / 2;
}
