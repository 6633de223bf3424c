import { type Day, daysBetween } from '../day/day.ts';
import type { BloomRecord } from './bloom-record.ts';
import type { WrittenStop } from './written-stops.ts';

/** A stop farther back from the show than this was for another season. */
const SEASON_DAYS = 300;

export interface SeasonsApart {
  /** What the plan may learn from. */
  readonly earlier: readonly BloomRecord[];
  /** The day on which the plant came into full bloom this season; `null` while it is not noted. */
  readonly bloomedOn: Day | null;
}

/**
 * Parts a plant's record of the season that is planned from all others: a plan must not learn from what it foresees.
 *
 * @param stops of the plant; the newest before the show is this season's
 * @returns records of stops after the show are left out as well
 */
export function seasonsApart(
  { plantId, showDay, stops }: { plantId: string; showDay: Day; stops: readonly WrittenStop[] },
  records: readonly BloomRecord[],
): SeasonsApart {
  const newest = stops
    .map(({ day }) => day)
    .filter((day) => day <= showDay && daysBetween(day, showDay) <= SEASON_DAYS)
    .sort()
    .at(-1);
  const isOfNow = (record: BloomRecord) => record.plantId === plantId && record.stopDay === newest;
  return {
    earlier: records.filter((record) => !isOfNow(record) && record.stopDay <= showDay),
    bloomedOn: records.find(isOfNow)?.fullBloomDay ?? null,
  };
}
