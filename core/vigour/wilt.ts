import { type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { requireFinite, requirePositive } from '../errors/expect.ts';

/** A plant's stature on one day, in one unit throughout. */
export interface StatureReading {
  readonly day: Day;
  readonly height: number;
  readonly spread: number;
  /** Mean height of the leaf above the rim. */
  readonly middle: number;
  /** Of the leaf above the rim, in the square of that unit. */
  readonly area: number;
  /** How far leaf reaches from the rim's middle, clockwise from straight up, as many sectors on every day. */
  readonly reach: readonly number[];
  /** 95 % repeatability of a length as a share of itself, the scale's doubt in it; `null` when not known. */
  readonly plusMinusShare: number | null;
}

/** By how much of itself each fell since the sittings before; below 0 it grew. */
export interface Fallen {
  readonly height: number;
  readonly spread: number;
  readonly middle: number;
  /** Area of the leaf ÷ (height × spread). */
  readonly tightness: number;
}

export interface WiltFinding {
  readonly ok: true;
  readonly isLimp: boolean;
  readonly fallen: Fallen;
  /** Share of its outline that lies where no leaf was before. */
  readonly hangsOut: number;
  /** The newest of the sittings it was compared with. */
  readonly against: Day;
  readonly words: string;
}

export interface NoWiltFinding {
  readonly ok: false;
  readonly reason: 'cut-since' | 'nothing-before';
  readonly hint: string;
}

/** What is known beside the sittings. */
export interface WiltFacts {
  /** Days on which the plant was cut at all: stops, ticked cuts, missed tips, bloom or leaf taken off. */
  readonly cutDays: readonly Day[];
  /** The plant is kept dry on purpose up to this day, before or after a stop; `null` when it is not. */
  readonly dryUntil: Day | null;
}

/** A plant that fell by less is not called limp. */
const LEAST_FALL = { height: 0.06, middle: 0.08 } as const;
/** A limp plant hangs within its spread; one that gained more than this has opened or grown. */
const MOST_SPREAD_GAIN = 0.02;
/** A cut takes the top and leaves the leaf below where it was: there the middle falls less than the height. */
const MIDDLE_OF_HEIGHT = 0.8;
/** A cut takes leaf from the outside and lets light in; a limp plant falls together. */
const MOST_OPENING = 0.1;
/** A limp plant hangs to where no leaf was, a cut one stays within its outline; reach that grew by less is growth and chance. */
const HANGS_OUT = { leastShare: 0.008, widening: 1.06 };
/** So many sittings are looked back to, none older than this. */
const LOOK_BACK = { sittings: 3, days: 35 };
/** Where no repeatability is known, as a share of a length: the rim's usual doubt. A guess. */
const UNTOLD_SHARE = 0.03;

/**
 * Whether a plant looks limp: height and spread falling together, its leaf sinking, without anything cut.
 *
 * @param now newest reading, lengths above 0
 * @param before earlier readings of the same side, in any order; those that were limp left out
 * @param facts cuts, and until when it is kept dry on purpose
 * @returns how far it fell and whether that looks limp; or why it cannot be told
 *
 * How: against the median of the last three sittings since the last cut. Limp is what fell in height and in the mean height of its leaf by more than
 * their plus-minus and more than growth or a photo's chance does, the mean height nearly as much as the height, did not widen, did not open, and
 * hangs out of its former outline. Growth lifts all three lengths; a cut leaves the leaf that stays in its place, within the former outline.
 *
 * Notes: a finding to be asked about, never to be acted on alone: only the grower's yes keeps a sitting out of the trend. A cut nobody wrote down
 * is the nearest mistake. Thirst, a wet root and heat look alike. Figures: `tests/core/vigour/figures.ts` on exact masks,
 * `tests/core/vigour/rendered-figures.ts` through the cut-out.
 *
 * Reference: common practice, no source; limits from renders that were let hang.
 *
 * Example: 200 mm high and 260 mm wide last week, 165 and 235 mm today, nothing cut: limp.
 */
export function looksLimp(
  now: StatureReading,
  before: readonly StatureReading[],
  { cutDays, dryUntil }: WiltFacts,
): WiltFinding | NoWiltFinding {
  const earlier = before.filter(({ day }) => day < now.day && daysBetween(day, now.day) <= LOOK_BACK.days);
  const lastCut =
    cutDays
      .filter((day) => day <= now.day)
      .sort()
      .at(-1) ?? null;
  // A photo of the day of a cut shows the plant before it.
  const uncut = earlier.filter(({ day }) => lastCut === null || lastCut === now.day || day > lastCut);
  const latest = [...uncut].sort((one, other) => (one.day < other.day ? 1 : -1)).slice(0, LOOK_BACK.sittings);
  const against = latest[0];
  if (against === undefined) {
    return earlier.length > 0 && lastCut !== null
      ? {
          ok: false,
          reason: 'cut-since',
          hint: `Cut on ${dayInWords(lastCut)}: the next sitting shows whether it hangs.`,
        }
      : {
          ok: false,
          reason: 'nothing-before',
          hint: 'There is no sitting of the last weeks to compare with.',
        };
  }
  const fall = (length: 'height' | 'spread' | 'middle') => {
    requirePositive(now[length], length);
    return 1 - now[length] / median(latest.map((reading) => reading[length]));
  };
  const byLength = { height: fall('height'), spread: fall('spread'), middle: fall('middle') };
  const fallen = { ...byLength, tightness: 1 - tightness(now) / median(latest.map(tightness)) };
  const hangsOut = shareOutside(now, latest);
  const doubt = Math.hypot(now.plusMinusShare ?? UNTOLD_SHARE, against.plusMinusShare ?? UNTOLD_SHARE);
  const isLimp =
    fallen.height > Math.max(LEAST_FALL.height, doubt) &&
    fallen.middle > Math.max(LEAST_FALL.middle, doubt) &&
    fallen.middle > MIDDLE_OF_HEIGHT * fallen.height &&
    fallen.spread > -MOST_SPREAD_GAIN &&
    fallen.tightness < MOST_OPENING &&
    hangsOut > HANGS_OUT.leastShare;
  return {
    ok: true,
    isLimp,
    fallen,
    hangsOut,
    against: against.day,
    words: wordsOf(isLimp, fallen, now.day, against.day, dryUntil),
  };
}

function tightness({ height, spread, area }: StatureReading): number {
  requirePositive(area, 'area');
  return area / (height * spread);
}

/** Share of the outline about the rim, by area, that lies beyond the middle of the former ones, a little widened. */
function shareOutside({ reach }: StatureReading, before: readonly StatureReading[]): number {
  let [outside, all] = [0, 0];
  reach.forEach((now, sector) => {
    const former = median(before.map((reading) => reading.reach[sector] ?? Number.NaN));
    requireFinite(former, 'reach');
    outside += Math.max(0, now * now - (HANGS_OUT.widening * former) ** 2);
    all += now * now;
  });
  return all === 0 ? 0 : outside / all;
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const [low, high] = [sorted[(sorted.length - 1) >> 1] as number, sorted[sorted.length >> 1] as number];
  return (low + high) / 2;
}

function wordsOf(isLimp: boolean, fallen: Fallen, now: Day, against: Day, dryUntil: Day | null): string {
  if (!isLimp) return 'Stands as firm as before.';
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  const spread = fallen.spread > 0.01 ? ` and ${percent(fallen.spread)} narrower` : '';
  const seen = `It stands ${percent(fallen.height)} lower${spread} than on ${dayInWords(against)}, and its leaf has sunk by ${percent(fallen.middle)}: it looks limp.`;
  if (dryUntil !== null && now <= dryUntil) {
    return `${seen} It is kept dry on purpose until ${dayInWords(dryUntil)}. Keep this sitting out of the trend?`;
  }
  return `${seen} Look at the compost before you water: a limp plant may be dry, too wet or too hot. If it was cut, write the cut down. Keep this sitting out of the trend?`;
}
