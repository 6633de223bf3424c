import { type Database, run } from './database.ts';

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
