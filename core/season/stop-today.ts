import type { StopDepth } from '../cut/cut.ts';
import type { Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { PlantKind } from '../plant.ts';
import { bloomBegins } from './bloom-likely.ts';
import { type DaysToBloom, daysToBloom, type SeasonKnowledge } from './days-to-bloom.ts';
import { DEFAULT_STOPS } from './default-stops.ts';
import { chanceLate } from './last-stop.ts';
import { percent } from './stop-effect.ts';

/** Whose bloom is put off by a stop today. */
export interface StoppedToday {
  readonly kind: PlantKind;
  readonly today: Day;
  /** `null`, or past: nothing to be late for. */
  readonly showDay: Day | null;
  /** What is known of the plant beside its kind; left out: the table of defaults alone. */
  readonly season?: {
    readonly plantId: string;
    readonly variety: string;
    readonly knowledge: SeasonKnowledge;
  };
}

/** When a plant stopped today is in full bloom. */
export interface StopToday {
  readonly days: DaysToBloom;
  /** Full bloom begins between these days nine times in ten. */
  readonly bloom90: readonly [from: Day, to: Day];
  /** `null` without a show to come. */
  readonly chanceLate: number | null;
  /** "full bloom begins 12 June 2026 to 30 June 2026, nine times in ten; the chance of being late is 34 %" */
  readonly words: string;
}

/**
 * What a stop of one depth today brings: the same belief that plans the stops.
 *
 * @returns `null` where nothing is known of that depth for this kind
 */
export function stopToday(depth: StopDepth, plant: StoppedToday): StopToday | null {
  const { kind, today, showDay, season } = plant;
  const { plantId, variety, knowledge } = season ?? WITHOUT_RECORDS;
  const days = daysToBloom({ plantId, variety, kind, depth }, knowledge);
  if (!days.ok) return null;
  const bloom90 = bloomBegins(days.belief, today, 0.9);
  const late = showDay === null || showDay < today ? null : chanceLate(days.belief, today, showDay);
  const begins = `full bloom begins ${dayInWords(bloom90[0])} to ${dayInWords(bloom90[1])}, nine times in ten`;
  return {
    days,
    bloom90,
    chanceLate: late,
    words: late === null ? begins : `${begins}; the chance of being late for the show is ${percent(late)}`,
  };
}

const WITHOUT_RECORDS = {
  plantId: '',
  variety: '',
  knowledge: { defaults: DEFAULT_STOPS, records: [] },
} as const;
