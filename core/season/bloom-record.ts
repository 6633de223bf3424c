import type { StopDepth } from '../cut/cut.ts';
import { type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import type { PlantKind } from '../plant.ts';
import { firstOfKind, type LogEntry } from './log-entry.ts';

/** From a last stop to full bloom, as one plant did it in one season. */
export interface BloomRecord {
  readonly plantId: string;
  readonly kind: PlantKind;
  readonly variety: string;
  readonly depth: StopDepth;
  readonly stopDay: Day;
  readonly firstFlowerDay: Day | null;
  readonly fullBloomDay: Day | null;
  /** Notes on the season that touch it, to be shown beside it. */
  readonly seasonNotes: readonly string[];
  /** Why nothing is learned from it; `null` when it counts. */
  readonly leftOut: string | null;
}

/** What the grower says of a stretch of time: a cold dark winter, a warm spring. */
export interface SeasonNote {
  readonly id: string;
  /** `null`: for all plants. */
  readonly plantId: string | null;
  readonly fromDay: Day;
  readonly toDay: Day;
  readonly text: string;
  /** Nothing is learned from records that touch it. */
  readonly setsAside: boolean;
}

/** What a record is read from. */
export interface PlantLog {
  readonly plantId: string;
  readonly kind: PlantKind;
  readonly variety: string;
  readonly stops: readonly { readonly day: Day; readonly depth: StopDepth }[];
  readonly log: readonly LogEntry[];
  readonly notes: readonly SeasonNote[];
}

/** Fewer days than this or more are taken for a slip of the pen. */
const BELIEVABLE_DAYS = [14, 400] as const;

/**
 * A plant's records of time to bloom: one for each stop after which it flowered before it was stopped again.
 *
 * @returns oldest first; those that cannot teach stay in the list with their reason
 *
 * Notes: the first entry of its kind after the stop counts. Where bloom was taken off before full bloom, the day of full bloom tells what
 * the grower did and not what the plant needs. No weather enters: a note can set a record aside, nothing else.
 */
export function bloomRecords(plant: PlantLog): BloomRecord[] {
  const stops = [...plant.stops].sort((one, other) => (one.day < other.day ? -1 : 1));
  return stops.flatMap((stop, index) => {
    const next = stops[index + 1]?.day ?? null;
    const log = plant.log.filter(({ day }) => next === null || day < next);
    const firstFlowerDay = firstOfKind(log, ['first-flower'], stop.day, null)?.day ?? null;
    const fullBloomDay = firstOfKind(log, ['full-bloom'], stop.day, null)?.day ?? null;
    if (firstFlowerDay === null && fullBloomDay === null) return [];
    const touching = plant.notes.filter(
      ({ plantId, fromDay, toDay }) =>
        (plantId === null || plantId === plant.plantId) &&
        toDay >= stop.day &&
        fromDay <= (fullBloomDay ?? (firstFlowerDay as Day)),
    );
    return {
      plantId: plant.plantId,
      kind: plant.kind,
      variety: plant.variety,
      depth: stop.depth,
      stopDay: stop.day,
      firstFlowerDay,
      fullBloomDay,
      seasonNotes: touching.map(({ text }) => text),
      leftOut: reasonToLeaveOut(stop.day, fullBloomDay, log, touching),
    };
  });
}

function reasonToLeaveOut(
  stopDay: Day,
  fullBloomDay: Day | null,
  log: readonly LogEntry[],
  notes: readonly SeasonNote[],
): string | null {
  if (fullBloomDay === null) return 'The day of full bloom is not noted.';
  const days = daysBetween(stopDay, fullBloomDay);
  const [least, most] = BELIEVABLE_DAYS;
  if (days < least || days > most) {
    return `${days} days from the stop of ${dayInWords(stopDay)} to full bloom cannot be right: check both days.`;
  }
  const taken = firstOfKind(log, ['bloom-taken-off'], stopDay, fullBloomDay);
  if (taken !== null) return `Bloom was taken off on ${dayInWords(taken.day)}, which put full bloom off.`;
  const aside = notes.find(({ setsAside }) => setsAside);
  return aside === undefined ? null : `Set aside by your note: ${aside.text}`;
}
