import { randomUUID } from 'node:crypto';
import { type Stop, type StopForm, stopSchema } from '../schemas/sitting.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const STOP = 'SELECT id, plant_id AS plantId, day, depth, note FROM stops';

export function stopById(db: Database, id: string): Stop | null {
  return oneRow(db, stopSchema, `${STOP} WHERE id = ? AND removed_at IS NULL`, id);
}

/** A plant's stops, newest first. */
export function stopsOfPlant(db: Database, plantId: string): Stop[] {
  return allRows(
    db,
    stopSchema,
    `${STOP} WHERE plant_id = ? AND removed_at IS NULL ORDER BY day DESC, rowid DESC`,
    plantId,
  );
}

/** Adds a stop; its id. */
export function addStop(db: Database, plantId: string, form: StopForm): string {
  const id = randomUUID();
  run(
    db,
    'INSERT INTO stops (id, plant_id, day, depth, note) VALUES (?, ?, ?, ?, ?)',
    id,
    plantId,
    form.day,
    form.depth,
    form.note,
  );
  return id;
}

export function changeStop(db: Database, id: string, form: StopForm): void {
  run(db, 'UPDATE stops SET day = ?, depth = ?, note = ? WHERE id = ?', form.day, form.depth, form.note, id);
}

/** Takes a stop away, or brings it back; `false` when there is no such stop. */
export function setStopRemoved(db: Database, id: string, removed: boolean): boolean {
  return (
    run(db, 'UPDATE stops SET removed_at = ? WHERE id = ?', removed ? new Date().toISOString() : null, id) > 0
  );
}
