import { requireAtLeast } from '../errors/expect.ts';
import type { LogBell } from '../growth/expected-growth.ts';
import { type BloomForm, bloomEvents, openingOf, RISE_KINDS } from './bloom-form.ts';
import type { TimedShare } from './bloom-readings.ts';
import type { Bell, ExpectedBloom } from './expected-bloom.ts';

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
const KNOTS = { half: 21, logRise: 11, logLasts: 5, logShare: 13 } as const;
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
const HEAVY_TAIL = 4;
/**
 * By how much more than their own variance readings count as unsure, because no bloom runs quite by a curve. Without it 90 % intervals held the
 * day of full bloom in 73–80 of 100 simulated blooms.
 */
const SHAPE_DOUBT = 1.7;
/** Numbers that the readings fix: half, rise, share. */
const FITTED_NUMBERS = 3;

/**
 * Every bloom that agrees with the readings, weighted by how well it does and by what was expected.
 *
 * @param readings at least one, the first on day 0
 * @param expected how much, how fast and how long it was expected to bloom
 *
 * How: Bayes' rule on a net of blooms that is drawn in round what counts, with no chance in it; every day may be the half, all alike
 * beforehand. The readings' own plus-minus is taken at its word, with a doubt of the curve's shape on top, unless even the best bloom misses them by
 * more: then all count as sure as they scatter about it (Birge's ratio). They never count as surer than stated, because the many readings of 0
 * before any colour would say so wrongly.
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

/** The knots of a net that are not negligible beside its best. */
function knotsThatCount(net: Net, readings: readonly TimedShare[], expected: ExpectedBloom): Knot[] {
  const seen = formsSeen(net, readings, expected);
  const shares = net.logShare.map((logShare) => ({
    logShare,
    fullShare: Math.exp(logShare),
    before: logBell(expected.logFullShare, logShare),
  }));
  // Every share of every form, twice over: what the scatter is has to be known before anything is weighed.
  let least = Number.POSITIVE_INFINITY;
  for (const form of seen) {
    for (const { fullShare } of shares) least = Math.min(least, misfitOf(form, fullShare));
  }
  const scatter = SHAPE_DOUBT * Math.max(1, least / Math.max(1, readings.length - FITTED_NUMBERS));
  const logOf = (form: SeenForm, { fullShare, before }: (typeof shares)[number]) =>
    form.before + before - misfitOf(form, fullShare) / 2 / scatter;
  let best = Number.NEGATIVE_INFINITY;
  for (const form of seen) for (const share of shares) best = Math.max(best, logOf(form, share));
  const counting: Knot[] = [];
  for (const one of seen) {
    for (const share of shares) {
      const log = logOf(one, share);
      if (log <= best - NEGLIGIBLE) continue;
      const at = { ...one.at, logShare: share.logShare };
      counting.push({ form: one.form, fullShare: share.fullShare, log, at });
    }
  }
  return counting;
}

/** A form with what its misfit is made of: a parabola in the share. */
interface SeenForm {
  readonly form: BloomForm;
  readonly at: Omit<Knot['at'], 'logShare'>;
  readonly rest: number;
  readonly products: number;
  readonly squares: number;
  /** Logarithm of what was held of it before. */
  readonly before: number;
}

/** The readings' squared distances from a bloom, in their standard deviations. */
function misfitOf({ rest, products, squares }: SeenForm, fullShare: number): number {
  return rest - 2 * fullShare * products + fullShare * fullShare * squares;
}

function formsSeen(net: Net, readings: readonly TimedShare[], expected: ExpectedBloom): SeenForm[] {
  const rest = readings.reduce((sum, { share, sd }) => sum + (share / sd) ** 2, 0);
  const seen: SeenForm[] = [];
  for (const { form, at } of formsOf(net)) {
    const open = openingOf(form);
    let [squares, products] = [0, 0];
    for (const { days, share, sd } of readings) {
      const opened = open(days) / sd;
      squares += opened * opened;
      products += (opened * share) / sd;
    }
    const paced = logBell(expected.logRiseDays, at.logRise) + logBell(expected.logLastsDays, at.logLasts);
    const dated = expected.fullDays === null ? 0 : logTail(expected.fullDays, bloomEvents(form).fullDays);
    seen.push({ form, at, rest, products, squares, before: paced + dated });
  }
  return seen;
}

function* formsOf(net: Net): Generator<{ form: BloomForm; at: Omit<Knot['at'], 'logShare'> }> {
  for (const kind of RISE_KINDS) {
    for (const half of net.half) {
      for (const logRise of net.logRise) {
        for (const logLasts of net.logLasts) {
          for (const fall of FALLS_OF_RISE) {
            const riseDays = Math.exp(logRise);
            const pace = { riseDays, lastsDays: Math.exp(logLasts), fallDays: fall * riseDays };
            yield { form: { kind, halfDays: half, ...pace }, at: { half, logRise, logLasts } };
          }
        }
      }
    }
  }
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

/** Heavier tails than a bell curve's (Student t), so that sittings soon overrule a day that is far off. */
function logTail({ mean, sd }: Bell, value: number): number {
  return -((HEAVY_TAIL + 1) / 2) * Math.log(1 + ((value - mean) / sd) ** 2 / HEAVY_TAIL);
}
