import { cuttingCaution } from '../advice/cautions.ts';
import { type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { PlantKind } from '../plant.ts';
import { DEFAULT_STOPS } from '../season/default-stops.ts';
import { usualWindows } from '../season/stop-defaults.ts';
import type { Cut } from './cut.ts';

/** The words that stand beside a cut list. */
export interface CutAdviceWords {
  /** How to work, in order; each a short plain sentence. */
  readonly howTo: readonly string[];
  readonly caution: string;
  /** What a cut today does to bloom at the show; `null` without a show ahead or a figure for this kind. */
  readonly bloom: string | null;
}

/**
 * How to work through a cut list.
 *
 * @param cuts may be empty: then only the caution remains
 * @param plant kind, today and the show day
 *
 * Reference: stopping every stem on one day, leaving only the tiniest new shoots, and working tips first: common practice, no source. To a joint with a
 * visible bud without a stub, clean blade: hobby and extension practice; stubs and grey mould: Penn. Flower Growers 203. Dry, moving air: Hausbeck and
 * Pennypacker (1991), Plant Disease 75:1168.
 */
export function cutAdviceWords(
  cuts: readonly Cut[],
  { kind, today, showDay }: { kind: PlantKind; today: Day; showDay: Day | null },
): CutAdviceWords {
  const deep = cuts.some(({ stop }) => stop === 'deep');
  const both = deep && cuts.some(({ stop }) => stop === 'tip');
  const howTo = [
    'Do all stops on one day, so that the plant breaks evenly. Leave only the tiniest new shoots.',
    'Cut just above a visible shoot or a joint, leaving no stub; near the mark is near enough.',
    'Use a clean blade, and clean it again between plants.',
    'Work on a dry plant, on an airy day, and keep the fresh cuts dry for a day.',
    ...(both ? ['Take the tips first, look again or photograph it, then take what is to go deeper.'] : []),
    'Photograph the plant after the work, so that planned and done can be compared.',
  ];
  return {
    howTo: cuts.length === 0 ? [] : howTo,
    caution: cuttingCaution(kind),
    bloom: cuts.length === 0 ? null : bloomWords(kind, today, showDay),
  };
}

/** Cutting inside the time that a stop needs to bloom again takes the bloom of that stem with it. */
function bloomWords(kind: PlantKind, today: Day, showDay: Day | null): string | null {
  const last = usualWindows(kind, DEFAULT_STOPS).at(-1);
  if (showDay === null || last === undefined || showDay < today) return null;
  const left = daysBetween(today, showDay);
  if (left >= last.fromDaysBefore) return null;
  const weeks = Math.round(last.toDaysBefore / 7);
  return left < last.toDaysBefore
    ? `A stem cut today is unlikely to bloom by the show on ${dayInWords(showDay)}, which is nearer than the ${weeks} weeks that this kind needs: weigh a gap in bloom against the outline. ${last.standing}`
    : `The show on ${dayInWords(showDay)} is about as far off as this kind needs to bloom again: do not put the work off. ${last.standing}`;
}
