import { requireAtLeast } from '../errors/expect.ts';
import type { LogBell } from '../growth/expected-growth.ts';
import { type BloomForm, bloomEvents, fadingOf, RISE_KINDS, risingOf } from './bloom-form.ts';
import { type BloomKnot, type BloomNet, drawnIn, firstNet } from './bloom-net.ts';
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

const MOST_DRAWS = 4;
/** A bloom mostly goes more slowly than it comes, but may go faster. */
const FALLS_OF_RISE = [0.7, 1.1, 1.7];
/** So far below the best in logarithm, a bloom no longer counts. */
const NEGLIGIBLE = 8;
/** Of all belief so much is handed on, the likeliest first. */
const KEPT = 0.99;
const HEAVY_TAIL = 4;
/**
 * By how much more than their own variance readings count as unsure, because no bloom runs quite by a curve. With it 90 % intervals hold the
 * day of full bloom in about that many simulated blooms.
 */
const SHAPE_DOUBT = 1.2;
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
  const lastDays = readings.reduce((last, { days }) => Math.max(last, days), 0);
  let net = firstNet(lastDays, expected);
  for (let draw = 1; draw < MOST_DRAWS; draw++) net = drawnIn(net, knotsThatCount(net, readings, expected));
  const counting = knotsThatCount(net, readings, expected).sort((one, other) => other.log - one.log);
  const best = (counting[0] as Knot).log;
  const all = counting.reduce((total, { log }) => total + Math.exp(log - best), 0);
  // The many that hardly count cost as much to draw a curve from as the few that do.
  let sum = 0;
  const end = counting.findIndex(({ log }) => {
    sum += Math.exp(log - best);
    return sum >= KEPT * all;
  });
  const kept = end < 0 ? counting : counting.slice(0, end + 1);
  return kept.map(({ form, fullShare, log }) => ({ form, fullShare, weight: Math.exp(log - best) / sum }));
}

/** A knot of the net, with its place on each axis. */
interface Knot {
  readonly form: BloomForm;
  readonly fullShare: number;
  /** Logarithm of its weight, up to one constant. */
  readonly log: number;
  readonly at: BloomKnot;
}

/** The knots of a net that are not negligible beside its best. */
function knotsThatCount(net: BloomNet, readings: readonly TimedShare[], expected: ExpectedBloom): Knot[] {
  const seen = formsSeen(net, readings, expected);
  const shares = net.logShare.map((logShare) => ({
    logShare,
    fullShare: Math.exp(logShare),
    before: logBell(expected.logFullShare, logShare),
  }));
  // What the scatter is has to be known before anything is weighed; a misfit is a parabola in the share, so its least is known without trying.
  const leastOf = ({ rest, products, squares }: SeenForm) =>
    squares === 0 ? rest : rest - products ** 2 / squares;
  let least = Number.POSITIVE_INFINITY;
  for (const form of seen) least = Math.min(least, leastOf(form));
  const scatter = SHAPE_DOUBT * Math.max(1, least / Math.max(1, readings.length - FITTED_NUMBERS));
  const logOf = (form: SeenForm, { fullShare, before }: (typeof shares)[number]) =>
    form.before + before - misfitOf(form, fullShare) / 2 / scatter;
  // No share can lift a form above this: most forms need not be tried with any.
  const mostOf = (form: SeenForm) => form.before - leastOf(form) / 2 / scatter;
  let best = Number.NEGATIVE_INFINITY;
  for (const form of seen) {
    if (mostOf(form) <= best) continue;
    for (const share of shares) best = Math.max(best, logOf(form, share));
  }
  const counting: Knot[] = [];
  for (const one of seen) {
    if (mostOf(one) <= best - NEGLIGIBLE) continue;
    for (const share of shares) {
      const log = logOf(one, share);
      if (log <= best - NEGLIGIBLE) continue;
      const { half, logRise, logLasts } = one.at;
      const at = { half, logRise, logLasts, logShare: share.logShare };
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

function formsSeen(net: BloomNet, readings: readonly TimedShare[], expected: ExpectedBloom): SeenForm[] {
  const rest = readings.reduce((sum, { share, sd }) => sum + (share / sd) ** 2, 0);
  const seen: SeenForm[] = [];
  for (const { rising, forms } of risesOf(net)) {
    // What has risen is the same for every way to last and to fade.
    const risen = readings.map(({ days, sd }) => rising(days) / sd);
    for (const { form, at } of forms) {
      const left = fadingOf(form);
      let [squares, products] = [0, 0];
      readings.forEach(({ days, share, sd }, k) => {
        const opened = (risen[k] as number) * left(days);
        squares += opened * opened;
        products += (opened * share) / sd;
      });
      const paced = logBell(expected.logRiseDays, at.logRise) + logBell(expected.logLastsDays, at.logLasts);
      const dated = expected.fullDays === null ? 0 : logTail(expected.fullDays, bloomEvents(form).fullDays);
      seen.push({ form, at, rest, products, squares, before: paced + dated });
    }
  }
  return seen;
}

/** Each way to rise, with the forms that rise so. */
function* risesOf(net: BloomNet): Generator<{
  rising: (days: number) => number;
  forms: { form: BloomForm; at: Omit<Knot['at'], 'logShare'> }[];
}> {
  for (const kind of RISE_KINDS) {
    for (const half of net.half) {
      for (const logRise of net.logRise) {
        const riseDays = Math.exp(logRise);
        const forms = net.logLasts.flatMap((logLasts) =>
          FALLS_OF_RISE.map((fall) => {
            const pace = { riseDays, lastsDays: Math.exp(logLasts), fallDays: fall * riseDays };
            return { form: { kind, halfDays: half, ...pace }, at: { half, logRise, logLasts } };
          }),
        );
        yield { rising: risingOf({ kind, halfDays: half, riseDays }), forms };
      }
    }
  }
}

function logBell({ mean, sd }: LogBell, value: number): number {
  return -(((value - mean) / sd) ** 2) / 2;
}

/** Heavier tails than a bell curve's (Student t), so that sittings soon overrule a day that is far off. */
function logTail({ mean, sd }: Bell, value: number): number {
  return -((HEAVY_TAIL + 1) / 2) * Math.log(1 + ((value - mean) / sd) ** 2 / HEAVY_TAIL);
}
