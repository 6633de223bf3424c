import { cuttingCaution } from '../advice/cautions.ts';
import { type StoppedToday, stopToday } from '../season/stop-today.ts';
import type { Cut } from './cut.ts';

/** The words that stand beside a cut list. */
export interface CutAdviceWords {
  /** How to work, in order; each a short plain sentence. */
  readonly howTo: readonly string[];
  readonly caution: string;
  /** What a cut today does to bloom at the show; `null` without a show ahead or a figure for this kind. */
  readonly bloom: string | null;
}

/** A chance of being late below this is left unsaid. */
const WORTH_TELLING = 0.1;

/**
 * How to work through a cut list.
 *
 * @param cuts may be empty: then only the caution remains
 * @param plant kind, today, the show day, and what is known of the plant
 *
 * Reference: stopping every stem on one day, leaving only the tiniest new shoots, and working tips first: common practice, no source. To a joint with a
 * visible bud without a stub, clean blade: hobby and extension practice; stubs and grey mould: Penn. Flower Growers 203. Dry, moving air: Hausbeck and
 * Pennypacker (1991), Plant Disease 75:1168.
 */
export function cutAdviceWords(cuts: readonly Cut[], plant: StoppedToday): CutAdviceWords {
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
    caution: cuttingCaution(plant.kind),
    bloom: cuts.length === 0 ? null : bloomWords(plant),
  };
}

/** Cutting inside the time that a stop needs to bloom again takes the bloom of that stem with it. */
function bloomWords(plant: StoppedToday): string | null {
  const tip = stopToday('tip', plant);
  const late = tip?.chanceLate ?? null;
  if (tip === null || late === null || late < WORTH_TELLING) return null;
  const { standing } = tip.days;
  return late > 0.5
    ? `A stem cut today is unlikely to bloom by the show: ${tip.words}. Weigh a gap in bloom against the outline. ${standing}`
    : `Do not put the work off: cut today, ${tip.words}. ${standing}`;
}
