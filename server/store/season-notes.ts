import { randomUUID } from 'node:crypto';
import { type SeasonNoteForm, type SeasonNoteRow, seasonNoteSchema } from '../schemas/season-note.ts';
import { flag } from './columns.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const row = seasonNoteSchema.extend({ setsAside: flag });

const NOTE = `SELECT id, plant_id AS plantId, from_day AS fromDay, to_day AS toDay, text, sets_aside AS setsAside
  FROM season_notes`;

export function seasonNoteById(db: Database, id: string): SeasonNoteRow | null {
  return oneRow(db, row, `${NOTE} WHERE id = ? AND removed_at IS NULL`, id);
}

/** Every note on a stretch of time, the latest first. */
export function allSeasonNotes(db: Database): SeasonNoteRow[] {
  return allRows(db, row, `${NOTE} WHERE removed_at IS NULL ORDER BY from_day DESC, rowid DESC`);
}

/** Adds a note; its id. */
export function addSeasonNote(db: Database, form: SeasonNoteForm): string {
  const id = randomUUID();
  run(
    db,
    `INSERT INTO season_notes (id, plant_id, from_day, to_day, text, sets_aside) VALUES (?, ?, ?, ?, ?, ?)`,
    id,
    form.plantId,
    form.fromDay,
    form.toDay,
    form.text,
    form.setsAside ? 1 : 0,
  );
  return id;
}

export function changeSeasonNote(db: Database, id: string, form: SeasonNoteForm): void {
  run(
    db,
    `UPDATE season_notes SET plant_id = ?, from_day = ?, to_day = ?, text = ?, sets_aside = ? WHERE id = ?`,
    form.plantId,
    form.fromDay,
    form.toDay,
    form.text,
    form.setsAside ? 1 : 0,
    id,
  );
}

/** Takes a note away, or brings it back; `false` when there is no such note. */
export function setSeasonNoteRemoved(db: Database, id: string, removed: boolean): boolean {
  const at = removed ? new Date().toISOString() : null;
  return run(db, 'UPDATE season_notes SET removed_at = ? WHERE id = ?', at, id) > 0;
}
