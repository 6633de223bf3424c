import { addDays, type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { requirePositive } from '../errors/expect.ts';
import type { PlantKind } from '../plant.ts';
import type { Bloom } from './bloom.ts';
import { bloomEvents } from './bloom-form.ts';
import { weightedQuantiles } from './weighted-quantile.ts';

/** How a bloom comes out for the show. */
export interface BloomAgainstShow {
  /** `unsure` where no one of them is more likely than the others together. */
  readonly verdict: 'early' | 'in-time' | 'late' | 'unsure';
  /** Days from the middle of full bloom to the show: above 0 the bloom is early, below 0 late. */
  readonly daysEarly: number;
  readonly daysEarly90: readonly [low: number, high: number];
  /** Together 1. */
  readonly chances: { readonly early: number; readonly inTime: number; readonly late: number };
  /** Heads that come later than this are left: they are to be in full bloom at the show; `null` when nothing is to be taken off. */
  readonly takeOffUntil: Day | null;
  readonly words: string;
  readonly standing: string;
}

const TAILS = [0.05, 0.5, 0.95];

/**
 * Sets a bloom against the show day.
 *
 * @param bloom as told from the sittings
 * @param show its day, how many days full bloom lasts (above 0), the plant's kind and today
 * @returns early, in time or late with chances, and what growers do then
 *
 * Definition: in time when the show falls into full bloom: on its first day or up to `lastsDays` after it. The days told are
 * those between the middle of full bloom and the show.
 *
 * How: counted over all plausible blooms. A head shown in colour takes the plant's own rise to be full: heads are taken off until the rise and
 * half of full bloom before the show, so that what comes to colour after it is in the middle of its bloom on the day.
 *
 * Notes: that heads taken off are followed by others is common practice, no source; how many follow is not known.
 */
export function bloomAgainstShow(
  { belief, firstDay }: Pick<Bloom, 'belief' | 'firstDay'>,
  show: { readonly day: Day; readonly lastsDays: number; readonly kind: PlantKind; readonly today: Day },
): BloomAgainstShow {
  requirePositive(show.lastsDays, 'lastsDays');
  const showDays = daysBetween(firstDay, show.day);
  const chances = { early: 0, inTime: 0, late: 0 };
  for (const { form, weight } of belief) {
    const { fullDays } = bloomEvents(form);
    // Days are whole: the day of full bloom begins half a day before its middle.
    if (fullDays - 0.5 > showDays) chances.late += weight;
    else if (fullDays + show.lastsDays + 0.5 < showDays) chances.early += weight;
    else chances.inTime += weight;
  }
  const middles = belief.map(({ form, weight }) => ({
    value: showDays - bloomEvents(form).fullDays - show.lastsDays / 2,
    weight,
  }));
  const [low, middle, high] = weightedQuantiles(middles, TAILS) as [number, number, number];
  const [riseDays] = weightedQuantiles(
    belief.map(({ form, weight }) => ({ value: form.riseDays, weight })),
    [0.5],
  ) as [number];
  const until = addDays(show.day, -Math.round(riseDays + show.lastsDays / 2));
  const verdict = verdictOf(chances);
  const told = {
    verdict,
    daysEarly: Math.round(middle),
    daysEarly90: [Math.round(low), Math.round(high)] as const,
    chances,
    takeOffUntil: verdict === 'early' && until > show.today ? until : null,
  };
  return { ...told, words: wordsOf(told, show.day), standing: standingOf(told, show.kind) };
}

function verdictOf({ early, inTime, late }: BloomAgainstShow['chances']): BloomAgainstShow['verdict'] {
  if (early > 0.5) return 'early';
  if (late > 0.5) return 'late';
  return inTime > 0.5 ? 'in-time' : 'unsure';
}

type Told = Omit<BloomAgainstShow, 'words' | 'standing'>;

function wordsOf({ verdict, daysEarly, daysEarly90, chances, takeOffUntil }: Told, showDay: Day): string {
  const show = `the show on ${dayInWords(showDay)}`;
  switch (verdict) {
    case 'in-time':
      return `In time: full bloom takes in ${show} (${outOfTen(chances.inTime)}).`;
    case 'late':
      return `About ${daysWords(-daysEarly)} late for ${show} (${outOfTen(chances.late)}): bloom that is late cannot be hurried for sure. Take nothing off, and keep the plant light.`;
    case 'early': {
      const advice =
        takeOffUntil === null
          ? 'It is too late to take off heads for others to follow: take off what fades, and show it as it is.'
          : `Take off the first heads until ${dayInWords(takeOffUntil)}.`;
      return `About ${daysWords(daysEarly)} early for ${show} (${outOfTen(chances.early)}). ${advice}`;
    }
    case 'unsure': {
      const [low, high] = daysEarly90;
      return `It cannot be told yet whether full bloom takes in ${show}: its middle lies between ${sideWords(high)} and ${sideWords(low)} it. Take nothing off yet; the next sitting tells more.`;
    }
  }
}

function sideWords(daysEarly: number): string {
  return `${daysWords(Math.abs(daysEarly))} ${daysEarly >= 0 ? 'before' : 'after'}`;
}

function daysWords(days: number): string {
  return Math.abs(days) === 1 ? '1 day' : `${days} days`;
}

function outOfTen(chance: number): string {
  const tenths = Math.round(10 * chance);
  return tenths >= 10 ? 'hardly in doubt' : `about ${tenths} chances in 10`;
}

function standingOf({ verdict }: Told, kind: PlantKind): string {
  if (verdict !== 'early') return 'Rests on the curve through your sittings.';
  return kind.startsWith('fuchsia')
    ? 'Taking off early bloom: common practice, no source; one exhibitor takes all flowers off until about 30 days before the show (smithyveg.blogspot.com, September 2007). The day is reckoned from your plant’s own pace.'
    : 'Taking off early bloom: common practice, no source. The day is reckoned from your plant’s own pace.';
}
