import type { Sureness } from '../advice/advice.ts';
import { addDays, type Day } from '../day/day.ts';
import { type BloomEvents, bloomEvents, shareOpen } from './bloom-form.ts';
import { type BloomReading, bloomStretch, timedShares } from './bloom-readings.ts';
import { bloomWords } from './bloom-words.ts';
import type { ExpectedBloom } from './expected-bloom.ts';
import { type PlausibleBloom, plausibleBlooms } from './plausible-blooms.ts';
import { weightedQuantiles } from './weighted-quantile.ts';

/** A day of the bloom, found on the curve or foretold by it. */
export interface BloomDate {
  /** As likely before as after. */
  readonly day: Day;
  /** Hold it with 90 %. */
  readonly from90: Day;
  readonly to90: Day;
  /** Whether it lies behind the newest reading, more likely than not; else it is a forecast. */
  readonly isPast: boolean;
}

/** A share of the canopy with its 90 % range, 0–1. */
export interface ShareRange {
  readonly share: number;
  readonly low90: number;
  readonly high90: number;
}

/** Where a bloom stands at the newest reading. */
export type BloomStage = 'first-colour' | 'opening' | 'full' | 'fading';

/** One bloom as the sittings tell it. */
export interface Bloom {
  readonly ok: true;
  readonly firstDay: Day;
  readonly newestDay: Day;
  readonly readings: readonly BloomReading[];
  readonly stage: BloomStage;
  /** 5 % of the full bloom open. */
  readonly firstColour: BloomDate;
  readonly half: BloomDate;
  /** 80 % open: the first day of full bloom. */
  readonly full: BloomDate;
  /** Fallen below 80 % again; `null` until full bloom is reached, because before that the sittings say nothing of it. */
  readonly fading: BloomDate | null;
  readonly fullShare: ShareRange;
  readonly sureness: Sureness;
  readonly words: string;
  readonly why: string;
  readonly restsOn: ExpectedBloom['restsOn'];
  readonly belief: readonly PlausibleBloom[];
}

export interface NoBloom {
  readonly ok: false;
  readonly reason: 'no-sitting' | 'no-colour';
  readonly hint: string;
}

/** What is known of a plant's bloom. */
export interface BloomFacts {
  readonly readings: readonly BloomReading[];
  /** Days of stops and of bloom taken off: a bloom begins anew after them. */
  readonly startsAgain: readonly Day[];
  readonly today: Day;
  readonly expected: ExpectedBloom;
}

/** Less flower than this, or than its own plus-minus, is not called colour. */
const LEAST_COLOUR = 0.01;
const TAILS = [0.05, 0.5, 0.95];
/** A day told to so many days either way is called likely. */
const LIKELY_WITHIN_DAYS = 7;

/**
 * First colour, half, full bloom and fading, found on the curve over the sittings, or foretold from the first weeks of colour.
 *
 * @param facts readings in any order, what begins a bloom anew, today, and what to expect
 * @returns the four days with 90 % intervals, or why nothing can be told
 *
 * How: see `plausibleBlooms`: every logistic rise and fall that agrees with the readings, each as much as it does. A day is the
 * median over all of them.
 *
 * Notes: the share that a camera sees from one side, so shares of two plants are not to be compared; days are. A wrong share matters little as
 * long as it is wrong by the same factor each week. On simulated seasons: `tests/core/bloom/figures.ts`.
 */
export function bloomOf({ readings, startsAgain, today, expected }: BloomFacts): Bloom | NoBloom {
  const stretch = bloomStretch(readings, startsAgain, today);
  const first = stretch[0];
  const newest = stretch.at(-1);
  if (first === undefined || newest === undefined)
    return { ok: false, reason: 'no-sitting', hint: NO_SITTING };
  const hasColour = stretch.some(({ share, plusMinus }) => share > Math.max(LEAST_COLOUR, plusMinus ?? 0));
  if (!hasColour) return { ok: false, reason: 'no-colour', hint: NO_COLOUR };

  const timed = timedShares(stretch);
  const belief = plausibleBlooms(timed, expected);
  const newestDays = timed.at(-1)?.days as number;
  const dated = (event: keyof BloomEvents): BloomDate => {
    const values = belief.map(({ form, weight }) => ({ value: bloomEvents(form)[event], weight }));
    const [from, middle, to] = weightedQuantiles(values, TAILS) as [number, number, number];
    const on = (days: number) => addDays(first.day, days);
    const day = Math.round(middle);
    // A day is held from half a day before its middle to half a day after: rounded as they fall, intervals would hold a day too much.
    const [from90, to90] = [Math.min(day, Math.ceil(from)), Math.max(day, Math.floor(to))];
    return { day: on(day), from90: on(from90), to90: on(to90), isPast: middle <= newestDays };
  };
  const dates = { firstColour: dated('firstColourDays'), half: dated('halfDays'), full: dated('fullDays') };
  const fading = dates.full.isPast ? dated('fadingDays') : null;
  const told = {
    firstDay: first.day,
    newestDay: newest.day,
    readings: stretch,
    stage: stageOf(dates, fading),
    ...dates,
    fading,
    fullShare: rangeOf(belief.map(({ fullShare, weight }) => ({ value: fullShare, weight }))),
    restsOn: expected.restsOn,
  };
  const width = weightedWidth(belief);
  const sureness: Sureness = width <= LIKELY_WITHIN_DAYS ? 'likely' : 'unsure';
  return { ok: true, ...told, sureness, ...bloomWords({ ...told, sureness }), belief };
}

/**
 * Share of the canopy in flower on a day, as the plausible blooms have it.
 *
 * @returns median and 90 % of the curve itself, 0–1; a photo's own plus-minus comes on top
 */
export function bloomShareOn({ belief }: Pick<Bloom, 'belief'>, daysSinceFirst: number): ShareRange {
  return rangeOf(
    belief.map(({ form, fullShare, weight }) => ({
      value: fullShare * shareOpen(form, daysSinceFirst),
      weight,
    })),
  );
}

const NO_SITTING = 'No sitting since the last stop or since bloom was taken off: photograph the plant.';
const NO_COLOUR = 'No flower is seen yet: the days of the bloom are told from the first weeks of colour on.';

function rangeOf(values: readonly { value: number; weight: number }[]): ShareRange {
  const [low90, share, high90] = weightedQuantiles(values, TAILS) as [number, number, number];
  return { share, low90, high90 };
}

/** Half of the 90 % interval of full bloom, days. */
function weightedWidth(belief: readonly PlausibleBloom[]): number {
  const values = belief.map(({ form, weight }) => ({ value: bloomEvents(form).fullDays, weight }));
  const [from, , to] = weightedQuantiles(values, TAILS) as [number, number, number];
  return (to - from) / 2;
}

function stageOf(dates: Pick<Bloom, 'half' | 'full'>, fading: BloomDate | null): BloomStage {
  if (fading?.isPast) return 'fading';
  if (dates.full.isPast) return 'full';
  return dates.half.isPast ? 'opening' : 'first-colour';
}
