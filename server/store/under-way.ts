import { z } from 'zod';
import { allRows, type Database, run } from './database.ts';

/** After so many starts that ended in the midst of measuring a photo it is left aside: each of them kept the grower out. */
const MOST_BEGUN = 3;

/** Notes that a photo is being measured. */
export function noteBegun(db: Database, viewId: string): void {
  run(
    db,
    `INSERT INTO under_way (view_id, begun) VALUES (?, 1)
     ON CONFLICT (view_id) DO UPDATE SET begun = begun + 1`,
    viewId,
  );
}

/** Notes that measuring it came to an end, whatever came out. */
export function noteEnded(db: Database, viewId: string): void {
  run(db, 'DELETE FROM under_way WHERE view_id = ?', viewId);
}

/** Before an orderly stop: what is under way then did not end the program. */
export function noteStopped(db: Database): void {
  run(db, 'UPDATE under_way SET begun = begun - 1 WHERE begun > 1');
  run(db, 'DELETE FROM under_way WHERE begun = 1');
}

/** At start: photos in whose midst the program ended each time are left aside until the grower asks for them; `words` say so. */
export function leaveAsideWhatEndsTheProgram(db: Database, words: string): void {
  run(
    db,
    `UPDATE views SET state = 'failed', failure = ?, revision = revision + 1
     WHERE state = 'measuring' AND id IN (SELECT view_id FROM under_way WHERE begun >= ?)`,
    words,
    MOST_BEGUN,
  );
}

const viewRow = z.object({ viewId: z.string() });

/** Photos left aside, also those that keep their older numbers. */
export function viewsLeftAside(db: Database): string[] {
  const aside = 'SELECT view_id AS viewId FROM under_way WHERE begun >= ?';
  return allRows(db, viewRow, aside, MOST_BEGUN).map(({ viewId }) => viewId);
}
