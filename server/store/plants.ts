import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { cutToSchema } from '../schemas/cut-to.ts';
import { turnRhythmSchema } from '../schemas/light.ts';
import { type PlantForm, plantFormSchema } from '../schemas/plant.ts';
import { workRhythmSchema } from '../schemas/work.ts';
import { flag, jsonText } from './columns.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const plantRow = plantFormSchema.omit({ showDay: true }).extend({
  id: z.string(),
  createdAt: z.string(),
  turnRhythm: jsonText.pipe(turnRhythmSchema),
  cutTo: jsonText.pipe(cutToSchema),
  workRhythm: jsonText.pipe(workRhythmSchema),
  putAway: flag,
  sample: flag,
  standId: z.string().nullable(),
  /** The show that the grower picked for its stops; `null`: the first to come. */
  aimShowId: z.string().nullable(),
  /** SHA-256 of the plant's own empty photo. */
  emptyPhoto: z.string().nullable(),
});
export type PlantRow = z.infer<typeof plantRow>;

const PLANT = `SELECT id, name, kind, variety, rim_mm AS rimMm, aim_show_id AS aimShowId,
    created_at AS createdAt, put_away AS putAway, sample, stand_id AS standId, empty_photo AS emptyPhoto,
    turn_rhythm AS turnRhythm, cut_to AS cutTo, work_rhythm AS workRhythm
  FROM plants`;

export function plantById(db: Database, id: string): PlantRow | null {
  return oneRow(db, plantRow, `${PLANT} WHERE id = ?`, id);
}

export function allPlants(db: Database): PlantRow[] {
  return allRows(db, plantRow, `${PLANT} ORDER BY created_at, name`);
}

/** Adds a plant; its id. */
export function addPlant(
  db: Database,
  form: Omit<PlantForm, 'showDay'>,
  { sample }: { readonly sample: boolean },
): string {
  const id = randomUUID();
  run(
    db,
    `INSERT INTO plants (id, name, kind, variety, rim_mm, stand_id, created_at, sample)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
    id,
    form.name,
    form.kind,
    form.variety,
    form.rimMm,
    form.standId,
    new Date().toISOString(),
    sample ? 1 : 0,
  );
  return id;
}

/** Writes a plant's facts anew. */
export function changePlant(db: Database, id: string, form: Omit<PlantRow, 'id'>): void {
  run(
    db,
    `UPDATE plants SET name = ?, kind = ?, variety = ?, rim_mm = ?, aim_show_id = ?, stand_id = ?, put_away = ?,
       turn_rhythm = ?, cut_to = ?, work_rhythm = ? WHERE id = ?`,
    form.name,
    form.kind,
    form.variety,
    form.rimMm,
    form.aimShowId,
    form.standId,
    form.putAway ? 1 : 0,
    JSON.stringify(form.turnRhythm),
    JSON.stringify(form.cutTo),
    JSON.stringify(form.workRhythm),
    id,
  );
}

export function setEmptyPhoto(db: Database, plantId: string, sha256: string | null): void {
  run(db, 'UPDATE plants SET empty_photo = ? WHERE id = ?', sha256, plantId);
}

export function putSamplesAway(db: Database, away: boolean): void {
  run(db, 'UPDATE plants SET put_away = ? WHERE sample = 1', away ? 1 : 0);
}
