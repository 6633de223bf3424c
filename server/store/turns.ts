import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { daySchema } from '../schemas/basics.ts';
import { type Turn, type TurnForm, turnSchema } from '../schemas/light.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const TURN = 'SELECT id, plant_id AS plantId, day, faces_light_deg AS facesLightDeg, note FROM turns';

export function turnById(db: Database, id: string): Turn | null {
  return oneRow(db, turnSchema, `${TURN} WHERE id = ? AND removed_at IS NULL`, id);
}

/** A plant's recorded turns, newest first; of one day the one written down last first. */
export function turnsOfPlant(db: Database, plantId: string): Turn[] {
  return allRows(
    db,
    turnSchema,
    `${TURN} WHERE plant_id = ? AND removed_at IS NULL ORDER BY day DESC, rowid DESC`,
    plantId,
  );
}

const turnDay = z.object({ day: daySchema });

/** Days on which a plant's pot was turned, from a day on, oldest first. */
export function turnDaysSince(db: Database, plantId: string, since: Day): Day[] {
  return allRows(
    db,
    turnDay,
    'SELECT day FROM turns WHERE plant_id = ? AND removed_at IS NULL AND day >= ? ORDER BY day',
    plantId,
    since,
  ).map(({ day }) => day);
}

/** Adds a turn; its id. */
export function addTurn(db: Database, plantId: string, form: TurnForm): string {
  const id = randomUUID();
  run(
    db,
    'INSERT INTO turns (id, plant_id, day, faces_light_deg, note) VALUES (?, ?, ?, ?, ?)',
    id,
    plantId,
    form.day,
    form.facesLightDeg,
    form.note,
  );
  return id;
}

export function changeTurn(db: Database, id: string, form: TurnForm): void {
  run(
    db,
    'UPDATE turns SET day = ?, faces_light_deg = ?, note = ? WHERE id = ?',
    form.day,
    form.facesLightDeg,
    form.note,
    id,
  );
}

/** Takes a turn away, or brings it back; `false` when there is no such turn. */
export function setTurnRemoved(db: Database, id: string, removed: boolean): boolean {
  return (
    run(db, 'UPDATE turns SET removed_at = ? WHERE id = ?', removed ? new Date().toISOString() : null, id) > 0
  );
}
