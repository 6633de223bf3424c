import { type EntryRow, entrySchema } from '../schemas/show.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const ENTRY = `SELECT plant_id AS plantId, show_id AS showId, class_id AS classId, result
  FROM entries JOIN shows ON shows.id = entries.show_id AND shows.removed_at IS NULL`;

/** The entries of a plant for shows that were not taken away, by day. */
export function entriesOfPlant(db: Database, plantId: string): EntryRow[] {
  return allRows(db, entrySchema, `${ENTRY} WHERE plant_id = ? ORDER BY shows.day`, plantId);
}

export function entryOf(db: Database, plantId: string, showId: string): EntryRow | null {
  return oneRow(db, entrySchema, `${ENTRY} WHERE plant_id = ? AND show_id = ?`, plantId, showId);
}

/** Enters a plant for a show, or changes its entry. */
export function setEntry(db: Database, { plantId, showId, classId, result }: EntryRow): void {
  run(
    db,
    `INSERT INTO entries (plant_id, show_id, class_id, result) VALUES (?, ?, ?, ?)
     ON CONFLICT (plant_id, show_id) DO UPDATE SET class_id = excluded.class_id, result = excluded.result`,
    plantId,
    showId,
    classId,
    result,
  );
}

/** Withdraws a plant from a show; `false` when it was not entered. */
export function withdraw(db: Database, plantId: string, showId: string): boolean {
  return run(db, 'DELETE FROM entries WHERE plant_id = ? AND show_id = ?', plantId, showId) > 0;
}
