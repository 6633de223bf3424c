import { randomUUID } from 'node:crypto';
import { type OwnWorkForm, type OwnWorkRow, ownWorkSchema } from '../schemas/work.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const WORK = `SELECT id, plant_id AS plantId, kind, day, every_days AS everyDays, until_day AS untilDay, text
  FROM own_work`;

export function ownWorkById(db: Database, id: string): OwnWorkRow | null {
  return oneRow(db, ownWorkSchema, `${WORK} WHERE id = ? AND removed_at IS NULL`, id);
}

/** Work of the grower's own for a plant. */
export function ownWorkOfPlant(db: Database, plantId: string): OwnWorkRow[] {
  return allRows(
    db,
    ownWorkSchema,
    `${WORK} WHERE plant_id = ? AND removed_at IS NULL ORDER BY day, rowid`,
    plantId,
  );
}

/** Adds a piece of work; its id. */
export function addOwnWork(db: Database, plantId: string, form: OwnWorkForm): string {
  const id = randomUUID();
  run(
    db,
    `INSERT INTO own_work (id, plant_id, kind, day, every_days, until_day, text) VALUES (?, ?, ?, ?, ?, ?, ?)`,
    id,
    plantId,
    form.kind,
    form.day,
    form.everyDays,
    form.untilDay,
    form.text,
  );
  return id;
}

export function changeOwnWork(db: Database, id: string, form: OwnWorkForm): void {
  run(
    db,
    'UPDATE own_work SET kind = ?, day = ?, every_days = ?, until_day = ?, text = ? WHERE id = ?',
    form.kind,
    form.day,
    form.everyDays,
    form.untilDay,
    form.text,
    id,
  );
}

/** Takes a piece of work away, or brings it back; `false` when there is no such work. */
export function setOwnWorkRemoved(db: Database, id: string, removed: boolean): boolean {
  const at = removed ? new Date().toISOString() : null;
  return run(db, 'UPDATE own_work SET removed_at = ? WHERE id = ?', at, id) > 0;
}
