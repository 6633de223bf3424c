import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import type { Show } from '../../core/season/show.ts';
import { type ShowForm, showClassSchema, showSchema } from '../schemas/show.ts';
import { jsonText } from './columns.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const showRow = showSchema.extend({
  classes: jsonText.pipe(z.array(showClassSchema).readonly()),
});

const SHOW = 'SELECT id, name, day, place, rules, classes FROM shows';

export function showById(db: Database, id: string): Show | null {
  return oneRow(db, showRow, `${SHOW} WHERE id = ? AND removed_at IS NULL`, id);
}

/** Every show, by day. */
export function allShows(db: Database): Show[] {
  return allRows(db, showRow, `${SHOW} WHERE removed_at IS NULL ORDER BY day, name`);
}

/** The show of a day; the first by name when there are several. */
export function showOfDay(db: Database, day: Day): Show | null {
  return oneRow(db, showRow, `${SHOW} WHERE day = ? AND removed_at IS NULL ORDER BY name`, day);
}

/** Adds a show; its id. */
export function addShow(db: Database, form: ShowForm): string {
  const id = randomUUID();
  run(
    db,
    'INSERT INTO shows (id, name, day, place, rules, classes) VALUES (?, ?, ?, ?, ?, ?)',
    id,
    form.name,
    form.day,
    form.place,
    form.rules,
    classesText(form),
  );
  return id;
}

export function changeShow(db: Database, id: string, form: ShowForm): void {
  run(
    db,
    'UPDATE shows SET name = ?, day = ?, place = ?, rules = ?, classes = ? WHERE id = ?',
    form.name,
    form.day,
    form.place,
    form.rules,
    classesText(form),
    id,
  );
}

/** Takes a show away, or brings it back; its entries stay with it. `false` when there is no such show. */
export function setShowRemoved(db: Database, id: string, removed: boolean): boolean {
  return (
    run(db, 'UPDATE shows SET removed_at = ? WHERE id = ?', removed ? new Date().toISOString() : null, id) > 0
  );
}

/** Takes the shows away for which sample plants alone are entered, or brings them back. */
export function setSampleShowsRemoved(db: Database, removed: boolean): void {
  run(
    db,
    `UPDATE shows SET removed_at = ? WHERE id IN (
       SELECT show_id FROM entries JOIN plants ON plants.id = entries.plant_id
       GROUP BY show_id HAVING min(plants.sample) = 1)`,
    removed ? new Date().toISOString() : null,
  );
}

function classesText({ classes }: ShowForm): string {
  return JSON.stringify(classes.map((one) => ({ ...one, id: one.id ?? randomUUID() })));
}
