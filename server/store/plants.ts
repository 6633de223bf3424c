import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { TurnRhythm } from '../../core/light/next-turn.ts';
import { type CutTo, cutToSchema } from '../schemas/cut-to.ts';
import { turnRhythmSchema } from '../schemas/light.ts';
import { type PlantForm, plantFormSchema } from '../schemas/plant.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const flag = z.union([z.literal(0), z.literal(1)]).transform((value) => value === 1);

const jsonText = z.string().transform((text): unknown => JSON.parse(text));

const plantRow = plantFormSchema.extend({
  id: z.string(),
  createdAt: z.string(),
  turnRhythm: jsonText.pipe(turnRhythmSchema),
  cutTo: jsonText.pipe(cutToSchema),
  putAway: flag,
  sample: flag,
  standId: z.string().nullable(),
  /** SHA-256 of the plant's own empty photo. */
  emptyPhoto: z.string().nullable(),
});
export type PlantRow = z.infer<typeof plantRow>;

const PLANT = `SELECT id, name, kind, variety, rim_mm AS rimMm, show_day AS showDay,
    created_at AS createdAt, put_away AS putAway, sample, stand_id AS standId, empty_photo AS emptyPhoto,
    turn_rhythm AS turnRhythm, cut_to AS cutTo
  FROM plants`;

export function plantById(db: Database, id: string): PlantRow | null {
  return oneRow(db, plantRow, `${PLANT} WHERE id = ?`, id);
}

export function allPlants(db: Database): PlantRow[] {
  return allRows(db, plantRow, `${PLANT} ORDER BY created_at, name`);
}

/** Adds a plant; its id. */
export function addPlant(db: Database, form: PlantForm, { sample }: { readonly sample: boolean }): string {
  const id = randomUUID();
  run(
    db,
    `INSERT INTO plants (id, name, kind, variety, rim_mm, show_day, stand_id, created_at, sample)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    id,
    form.name,
    form.kind,
    form.variety,
    form.rimMm,
    form.showDay,
    form.standId,
    new Date().toISOString(),
    sample ? 1 : 0,
  );
  return id;
}

/** Writes a plant's facts anew. */
export function changePlant(
  db: Database,
  id: string,
  form: PlantForm & { readonly putAway: boolean; readonly turnRhythm: TurnRhythm; readonly cutTo: CutTo },
): void {
  run(
    db,
    `UPDATE plants SET name = ?, kind = ?, variety = ?, rim_mm = ?, show_day = ?, stand_id = ?, put_away = ?,
       turn_rhythm = ?, cut_to = ? WHERE id = ?`,
    form.name,
    form.kind,
    form.variety,
    form.rimMm,
    form.showDay,
    form.standId,
    form.putAway ? 1 : 0,
    JSON.stringify(form.turnRhythm),
    JSON.stringify(form.cutTo),
    id,
  );
}

export function setEmptyPhoto(db: Database, plantId: string, sha256: string | null): void {
  run(db, 'UPDATE plants SET empty_photo = ? WHERE id = ?', sha256, plantId);
}

export function putSamplesAway(db: Database, away: boolean): void {
  run(db, 'UPDATE plants SET put_away = ? WHERE sample = 1', away ? 1 : 0);
}
