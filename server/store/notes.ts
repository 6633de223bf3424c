import { randomUUID } from 'node:crypto';
import { type Note, type NoteForm, noteSchema } from '../schemas/sitting.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const NOTE = 'SELECT id, plant_id AS plantId, day, kind, text FROM notes';

export function noteById(db: Database, id: string): Note | null {
  return oneRow(db, noteSchema, `${NOTE} WHERE id = ? AND removed_at IS NULL`, id);
}

/** A plant's notes, newest first. */
export function notesOfPlant(db: Database, plantId: string): Note[] {
  return allRows(
    db,
    noteSchema,
    `${NOTE} WHERE plant_id = ? AND removed_at IS NULL ORDER BY day DESC, rowid DESC`,
    plantId,
  );
}

/** Adds a note; its id. */
export function addNote(db: Database, plantId: string, form: NoteForm): string {
  const id = randomUUID();
  run(
    db,
    'INSERT INTO notes (id, plant_id, day, kind, text) VALUES (?, ?, ?, ?, ?)',
    id,
    plantId,
    form.day,
    form.kind,
    form.text,
  );
  return id;
}

export function changeNote(db: Database, id: string, form: NoteForm): void {
  run(db, 'UPDATE notes SET day = ?, kind = ?, text = ? WHERE id = ?', form.day, form.kind, form.text, id);
}

/** Takes a note away, or brings it back; `false` when there is no such note. */
export function setNoteRemoved(db: Database, id: string, removed: boolean): boolean {
  return (
    run(db, 'UPDATE notes SET removed_at = ? WHERE id = ?', removed ? new Date().toISOString() : null, id) > 0
  );
}
