import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { type PlantForm, plantFormSchema } from '../schemas/plant.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const flag = z.union([z.literal(0), z.literal(1)]).transform((value) => value === 1);

const plantRow = plantFormSchema.extend({
  id: z.string(),
  createdAt: z.string(),
  putAway: flag,
  sample: flag,
  /** The plant's one stand. */
  standId: z.string(),
  emptyPhoto: z.string().nullable(),
});
export type PlantRow = z.infer<typeof plantRow>;

const PLANT = `SELECT plants.id, name, kind, variety, rim_mm AS rimMm, show_day AS showDay,
    created_at AS createdAt, put_away AS putAway, sample, stands.id AS standId,
    stands.empty_photo AS emptyPhoto
  FROM plants JOIN stands ON stands.plant_id = plants.id`;

export function plantById(db: Database, id: string): PlantRow | null {
  return oneRow(db, plantRow, `${PLANT} WHERE plants.id = ?`, id);
}

export function allPlants(db: Database): PlantRow[] {
  return allRows(db, plantRow, `${PLANT} ORDER BY plants.created_at, plants.name`);
}

/** Adds a plant with its stand; the plant's id. */
export function addPlant(db: Database, form: PlantForm, { sample }: { readonly sample: boolean }): string {
  const id = randomUUID();
  db.transaction(() => {
    run(
      db,
      `INSERT INTO plants (id, name, kind, variety, rim_mm, show_day, created_at, sample)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
      id,
      form.name,
      form.kind,
      form.variety,
      form.rimMm,
      form.showDay,
      new Date().toISOString(),
      sample ? 1 : 0,
    );
    run(db, 'INSERT INTO stands (id, plant_id) VALUES (?, ?)', randomUUID(), id);
  })();
  return id;
}

/** Writes a plant's facts anew. */
export function changePlant(db: Database, id: string, form: PlantForm & { readonly putAway: boolean }): void {
  run(
    db,
    `UPDATE plants SET name = ?, kind = ?, variety = ?, rim_mm = ?, show_day = ?, put_away = ? WHERE id = ?`,
    form.name,
    form.kind,
    form.variety,
    form.rimMm,
    form.showDay,
    form.putAway ? 1 : 0,
    id,
  );
}

export function setEmptyPhoto(db: Database, standId: string, sha256: string | null): void {
  run(db, 'UPDATE stands SET empty_photo = ? WHERE id = ?', sha256, standId);
}

export function putSamplesAway(db: Database, away: boolean): void {
  run(db, 'UPDATE plants SET put_away = ? WHERE sample = 1', away ? 1 : 0);
}
