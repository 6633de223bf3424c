import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { type StandForm, type StandPlace, standPlaceSchema } from '../schemas/stand.ts';
import { allRows, type Database, oneRow, run } from './database.ts';
import { addVersion } from './stand-versions.ts';

const standRow = standPlaceSchema.extend({
  id: z.string(),
  name: z.string(),
  putAway: z.union([z.literal(0), z.literal(1)]).transform((value) => value === 1),
  /** Plants on the bench that stand here. */
  plants: z.int(),
});
/** A fixed camera place; what matters of it lies in its versions. */
export type StandRow = z.infer<typeof standRow>;

const STAND = `SELECT id, name, put_away AS putAway, latitude_deg AS latitudeDeg, light_bearing_deg AS lightBearingDeg,
    (SELECT count(*) FROM plants WHERE stand_id = stands.id AND plants.put_away = 0) AS plants
  FROM stands`;

export function standById(db: Database, id: string): StandRow | null {
  return oneRow(db, standRow, `${STAND} WHERE id = ?`, id);
}

/** Every stand, those put away last. */
export function allStands(db: Database): StandRow[] {
  return allRows(db, standRow, `${STAND} ORDER BY put_away, created_at, name`);
}

/** Adds a stand with its first version; its id. */
export function addStand(db: Database, form: StandForm & StandPlace, sinceDay: Day): string {
  const id = randomUUID();
  db.transaction(() => {
    run(
      db,
      'INSERT INTO stands (id, name, created_at, latitude_deg, light_bearing_deg) VALUES (?, ?, ?, ?, ?)',
      id,
      form.name,
      new Date().toISOString(),
      form.latitudeDeg,
      form.lightBearingDeg,
    );
    addVersion(db, {
      ...form,
      standId: id,
      sinceDay,
      changed: 'The stand was set up.',
      emptyPhoto: null,
      emptyCheck: null,
      firstPhoto: null,
    });
  })();
  return id;
}

export function renameStand(db: Database, id: string, name: string): void {
  run(db, 'UPDATE stands SET name = ? WHERE id = ?', name, id);
}

/** Says where on earth a stand is; every version of it stands there. */
export function setStandPlace(db: Database, id: string, place: StandPlace): void {
  run(
    db,
    'UPDATE stands SET latitude_deg = ?, light_bearing_deg = ? WHERE id = ?',
    place.latitudeDeg,
    place.lightBearingDeg,
    id,
  );
}

export function setStandPutAway(db: Database, id: string, away: boolean): void {
  run(db, 'UPDATE stands SET put_away = ? WHERE id = ?', away ? 1 : 0, id);
}
