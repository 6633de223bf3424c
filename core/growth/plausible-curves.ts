import type { ExpectedGrowth, LogBell } from './expected-growth.ts';
import { type CurveForm, type CurveKind, shareOfFinal } from './growth-curve.ts';
import type { TimedRadius } from './radius-readings.ts';

/** A form that the curve may have, with the size that fits the readings best. */
export interface PlausibleCurve {
  readonly form: CurveForm;
  /** Share of belief, all together 1. */
  readonly weight: number;
  readonly finalRadiusMm: number;
  /** Spread of the final radius at this form: scale of a Student t with the belief's `freedom`. */
  readonly finalScaleMm: number;
  /** How many of the readings' own standard deviations they scatter about this curve. */
  readonly scatter: number;
}

/** All curves of one kind that agree with the readings. */
export interface CurveBelief {
  readonly curves: readonly PlausibleCurve[];
  readonly freedom: number;
}

/** A stated plus-minus counts as much as so many readings' scatter. */
const SCATTER_WORTH = 2;
const HEAVY_TAIL = 4;
const LEAST_LOG_EXCESS = Math.log(1e-3);
const MOST_LOG_EXCESS = Math.log(200);
const PACES = 25;
const FACTORS = 11;
/** The first net of paces spans so many standard deviations; each is drawn in to what counted of the one before. */
const MOST_SDS = 6;
const MOST_DRAWS = 8;
/** So far below the best in logarithm, a form no longer counts. */
const NEGLIGIBLE = 11;

/**
 * Every form that the growth curve may have, weighted by how well it fits the readings and what was held likely before.
 *
 * @param kind of curve
 * @param readings of one stretch, at least one
 * @param expected how much and how fast it was expected to grow
 *
 * How: Bayes' rule on a net of forms, with no chance in it. For every pace the net tries the growth factors that
 * count. At a given form the radius is a straight multiple of the final radius, so the best size and its spread follow by straight least
 * squares and need no net; neither does the scatter, of which the readings' own plus-minus is the first guess and which they correct
 * (inverse gamma). Nothing is held of the size beforehand.
 *
 * Notes: intervals from the net are not bound to be symmetric, which those from slopes at the best fit are, and wrongly so where the
 * readings do not reach the bend of the curve.
 *
 * Reference: linear part after Gelman et al. (2013), Bayesian Data Analysis, 3rd ed., 14.2; trapezoid net.
 */
export function plausibleCurves(
  kind: CurveKind,
  readings: readonly TimedRadius[],
  expected: ExpectedGrowth,
): CurveBelief {
  const freedom = SCATTER_WORTH + readings.length - 1;
  const across = (logWeeks: number) => (logExcess: number) =>
    formSeen(
      { kind, growthFactor: 1 + Math.exp(logExcess), weeksToHalf: Math.exp(logWeeks) },
      readings,
      expected,
      freedom,
    );
  const { mean, sd } = expected.logWeeksToHalf;
  let net = evenly(mean - MOST_SDS * sd, mean + MOST_SDS * sd);
  for (let draw = 0; draw < MOST_DRAWS; draw++) {
    const heights = net.map((logWeeks) => peakOf(across(logWeeks)).height);
    const least = Math.max(...heights) - NEGLIGIBLE;
    const first = heights.findIndex((height) => height > least);
    const last = heights.findLastIndex((height) => height > least);
    const step = (net[1] as number) - (net[0] as number);
    net = evenly((net[first] as number) - step, (net[last] as number) + step);
    if (last - first > (3 / 4) * PACES) break;
  }
  return { curves: weighted(net.flatMap((logWeeks) => nodesAcross(across(logWeeks)))), freedom };
}

function evenly(from: number, to: number): number[] {
  return Array.from({ length: PACES }, (_, k) => from + (k * (to - from)) / (PACES - 1));
}

interface SeenForm extends Omit<PlausibleCurve, 'weight'> {
  /** Logarithm of its weight, up to one constant. */
  readonly logWeight: number;
}

interface Node extends SeenForm {
  /** Width of the net's mesh, in ln(growth factor − 1). */
  readonly mesh: number;
}

function formSeen(
  form: CurveForm,
  readings: readonly TimedRadius[],
  expected: ExpectedGrowth,
  freedom: number,
): SeenForm {
  let [products, squares, radii] = [0, 0, 0];
  for (const { weeks, radiusMm, sdMm } of readings) {
    const share = shareOfFinal(form, weeks) / sdMm;
    products += (share * radiusMm) / sdMm;
    squares += share * share;
    radii += (radiusMm / sdMm) ** 2;
  }
  const finalRadiusMm = products / squares;
  const misfit = Math.max(0, radii - products * finalRadiusMm);
  const scatter = Math.sqrt((SCATTER_WORTH + misfit) / freedom);
  const growthMm = finalRadiusMm * (1 - 1 / form.growthFactor);
  return {
    form,
    finalRadiusMm,
    finalScaleMm: scatter / Math.sqrt(squares),
    scatter,
    logWeight:
      logBell(expected.logGrowthMm, Math.log(growthMm)) +
      logBell(expected.logWeeksToHalf, Math.log(form.weeksToHalf)) -
      Math.log(squares) / 2 -
      Math.log(finalRadiusMm) -
      (freedom / 2) * Math.log(SCATTER_WORTH + misfit),
  };
}

/** Nodes of even mesh across the growth factors that count at one pace. */
function nodesAcross(seenAt: (logExcess: number) => SeenForm): Node[] {
  const peak = peakOf(seenAt);
  const level = peak.height - NEGLIGIBLE;
  const from = crossing(seenAt, level, peak.place, LEAST_LOG_EXCESS);
  const to = crossing(seenAt, level, peak.place, MOST_LOG_EXCESS);
  const mesh = (to - from) / FACTORS;
  return Array.from({ length: FACTORS }, (_, k) => ({ ...seenAt(from + (k + 0.5) * mesh), mesh }));
}

function weighted(nodes: readonly Node[]): PlausibleCurve[] {
  const highest = Math.max(...nodes.map(({ logWeight }) => logWeight));
  const weights = nodes.map(({ logWeight, mesh }) => mesh * Math.exp(logWeight - highest));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  return nodes.map(({ form, finalRadiusMm, finalScaleMm, scatter }, k) => ({
    form,
    finalRadiusMm,
    finalScaleMm,
    scatter,
    weight: (weights[k] as number) / sum,
  }));
}

/** Heavier tails than a bell curve's (Student t), so that readings soon overrule a guess that is far off. */
function logBell({ mean, sd }: LogBell, value: number): number {
  return -((HEAVY_TAIL + 1) / 2) * Math.log(1 + ((value - mean) / sd) ** 2 / HEAVY_TAIL);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const NARROWINGS = 30;
const HALVINGS = 12;

/** The best growth factor at one pace, by golden section (Kiefer 1953). */
function peakOf(seenAt: (logExcess: number) => SeenForm): { place: number; height: number } {
  let [from, to] = [LEAST_LOG_EXCESS, MOST_LOG_EXCESS];
  let [left, right] = [to - GOLDEN * (to - from), from + GOLDEN * (to - from)];
  let [leftHeight, rightHeight] = [seenAt(left).logWeight, seenAt(right).logWeight];
  for (let k = 0; k < NARROWINGS; k++) {
    if (leftHeight > rightHeight) {
      [to, right, rightHeight] = [right, left, leftHeight];
      left = to - GOLDEN * (to - from);
      leftHeight = seenAt(left).logWeight;
    } else {
      [from, left, leftHeight] = [left, right, rightHeight];
      right = from + GOLDEN * (to - from);
      rightHeight = seenAt(right).logWeight;
    }
  }
  return { place: (from + to) / 2, height: Math.max(leftHeight, rightHeight) };
}

/** Where the weight falls to a level between the peak and an end; the end itself if it stays above. */
function crossing(seenAt: (logExcess: number) => SeenForm, level: number, peak: number, end: number): number {
  if (seenAt(end).logWeight > level) return end;
  let [above, below] = [peak, end];
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (above + below) / 2;
    if (seenAt(middle).logWeight > level) above = middle;
    else below = middle;
  }
  return below;
}
