import type { Day } from '../../core/day/day.ts';
import type { LogEntry } from '../../core/season/log-entry.ts';

/** A day from which on a plant's bloom begins anew. */
export interface BloomStart {
  readonly day: Day;
  readonly why: 'stop' | 'bloom-taken-off' | 'bloom-over';
}

/** Stops, heads taken off and blooms that were over up to today, oldest first; of several on one day the stop. */
export function bloomStarts(
  stops: readonly { readonly day: Day }[],
  log: readonly LogEntry[],
  today: Day,
): BloomStart[] {
  const noted = log.flatMap(({ kind, day }) =>
    kind === 'bloom-taken-off' || kind === 'bloom-over' ? [{ day, why: kind }] : [],
  );
  const byDay = new Map<Day, BloomStart>();
  for (const start of [...noted, ...stops.map(({ day }) => ({ day, why: 'stop' as const }))]) {
    if (start.day <= today) byDay.set(start.day, start);
  }
  return [...byDay.values()].sort((one, other) => (one.day < other.day ? -1 : 1));
}
