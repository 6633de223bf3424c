import type { Sureness } from '../advice/advice.ts';
import type { Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { ExpectedGrowth } from './expected-growth.ts';
import type { GrowthBelief, Range } from './growth-belief.ts';
import type { GrowthCurve } from './growth-curve.ts';
import type { GrowthStretch } from './radius-readings.ts';

/** With fewer sittings since the stop the range is said to be wide. */
export const FEW_SITTINGS = 5;
/** A final radius told no better than this, half its range as a share of itself, is unsure. */
const UNSURE_SHARE = 0.2;
/** Readings that scatter so many times as much as their plus-minus says do not follow the curve. */
const WILD_SCATTER = 3;

interface GrowthFacts {
  readonly since: Day;
  readonly begunBy: GrowthStretch['begunBy'];
  readonly sittings: number;
  readonly newestRadiusMm: number;
  readonly curve: GrowthCurve;
  readonly interval95: { readonly finalRadiusMm: Range; readonly weeksToHalf: Range };
  readonly restsOn: ExpectedGrowth['restsOn'];
  readonly belief: GrowthBelief;
}

/** A growth curve as a grower would say it, how sure it is and what it rests on. */
export function growthWords(facts: GrowthFacts): {
  words: string;
  why: string;
  sureness: Sureness;
  notes: string[];
} {
  const { curve, interval95, sittings, newestRadiusMm, belief } = facts;
  const [low, high] = interval95.finalRadiusMm;
  const [quick, slow] = interval95.weeksToHalf;
  const isFew = sittings < FEW_SITTINGS;
  const isSure = !isFew && (high - low) / 2 < UNSURE_SHARE * curve.finalRadiusMm;
  return {
    words: `${sinceWords(facts)} the ball has grown from a radius of about ${mm(curve.startRadiusMm)} to ${mm(newestRadiusMm)} mm. Left alone it tends to ${mm(curve.finalRadiusMm)} mm (${mm(low)}–${mm(high)}), half of that growth in ${weeks(curve.weeksToHalf)} weeks (${weeks(quick)}–${weeks(slow)}).`,
    why: isFew ? `${fewWords(sittings)} ${RESTS_ON[facts.restsOn]}` : choiceWords(belief, sittings),
    sureness: isSure ? 'likely' : 'unsure',
    notes: scatterOf(belief) > WILD_SCATTER ? [WILD_NOTE] : [],
  };
}

const WILD_NOTE =
  'The sittings lie much farther off the curve than their plus-minus says. Was the plant cut without writing it down, or the rim read wrongly?';

/** What counts beside the sittings. */
export const RESTS_ON: Readonly<Record<ExpectedGrowth['restsOn'], string>> = {
  plant: 'Beside them counts how this plant grew between its earlier stops.',
  variety: 'Beside them counts how other plants of its variety grew.',
  guess:
    'Beside them counts a guess of ours (growth by 0.7 of the ball’s radius, half of it in 5 weeks, each give or take a factor of 2): no published figure was found.',
};

function sinceWords({ begunBy, since }: GrowthFacts): string {
  return begunBy === 'stop'
    ? `Since the stop of ${dayInWords(since)}`
    : `Since the first sitting on ${dayInWords(since)} (no stop before it is written down)`;
}

function fewWords(sittings: number): string {
  const count = sittings === 1 ? 'Only one sitting' : `Only ${sittings} sittings`;
  return `${count} since then: a growth curve needs at least five, so the range is wide.`;
}

function choiceWords({ choice }: GrowthBelief, sittings: number): string {
  const name = choice.chosen === 'logistic' ? 'logistic' : 'Gompertz';
  const share = choice.weights[choice.chosen];
  const clearly =
    choice.fits[choice.chosen].aicc === null
      ? 'though the sittings are too few to tell it from the other'
      : `with ${Math.round(100 * share)} % of the weight against the other kind (AICc)`;
  return `Fitted to ${sittings} sittings: a ${name} curve lies nearest, ${clearly}; the ranges allow for both.`;
}

/** How many times their own standard deviations the readings scatter, at the likeliest curve. */
function scatterOf({ curves }: GrowthBelief): number {
  return curves.reduce((best, curve) => (curve.weight > best.weight ? curve : best)).scatter;
}

function mm(value: number): string {
  return value.toFixed(0);
}

function weeks(value: number): string {
  return value < 10 ? value.toFixed(1) : value.toFixed(0);
}
