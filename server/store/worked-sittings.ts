import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { localDay } from '../local-day.ts';
import { allRows, type Database, run } from './database.ts';

/** Condition on a view: it shows the plant before the work, because nothing was ticked off when it came in. */
export const BEFORE_WORK =
  'NOT EXISTS (SELECT 1 FROM sittings AS worked WHERE worked.id = sitting_id AND worked.worked_at < received_at)';

/**
 * Notes when the first cut of a sitting's list was ticked off, or that none is any more.
 *
 * @returns whether that has changed, and with it which later photos show the plant before the work
 */
export function noteWork(db: Database, sittingId: string): boolean {
  const changed = run(
    db,
    `UPDATE sittings SET worked_at = CASE WHEN worked_at IS NULL THEN ? END
     WHERE id = ? AND (worked_at IS NULL) =
       EXISTS (SELECT 1 FROM cut_marks WHERE sitting_id = sittings.id AND state = 'done')`,
    new Date().toISOString(),
    sittingId,
  );
  return changed > 0;
}

const workedRow = z.object({ workedAt: z.iso.datetime() });

/** Days on which the cut list of one of the plant's sittings was worked. */
export function workedDaysOf(db: Database, plantId: string): Day[] {
  return allRows(
    db,
    workedRow,
    'SELECT worked_at AS workedAt FROM sittings WHERE plant_id = ? AND worked_at IS NOT NULL ORDER BY worked_at',
    plantId,
  ).map(({ workedAt }) => localDay(new Date(workedAt)));
}
