import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { daySchema } from '../schemas/basics.ts';
import { type Database, oneRow, run } from './database.ts';
import type { PlantRow } from './plants.ts';
import { versionOn } from './stand-versions.ts';
import { standById } from './stands.ts';

const sittingRow = z.object({
  id: z.string(),
  plantId: z.string(),
  day: daySchema,
  /** The version of the stand it was taken on; `null` for none. */
  standVersionId: z.int().nullable(),
});
export type SittingRow = z.infer<typeof sittingRow>;

const SITTING = 'SELECT id, plant_id AS plantId, day, stand_version_id AS standVersionId FROM sittings';

export function sittingById(db: Database, id: string): SittingRow | null {
  return oneRow(db, sittingRow, `${SITTING} WHERE id = ?`, id);
}

/** A plant's sitting of that day, `null` when there is none. */
export function sittingOfDay(db: Database, plantId: string, day: Day): SittingRow | null {
  return oneRow(db, sittingRow, `${SITTING} WHERE plant_id = ? AND day = ?`, plantId, day);
}

/** The plant's sitting of that day, made when there is none yet on the stand as it was that day; its id. */
export function sittingOn(db: Database, plant: Pick<PlantRow, 'id' | 'standId'>, day: Day): string {
  const known = sittingOfDay(db, plant.id, day);
  if (known) return known.id;
  const id = randomUUID();
  const stand = plant.standId === null ? null : standById(db, plant.standId);
  run(
    db,
    'INSERT INTO sittings (id, plant_id, day, stand_version_id) VALUES (?, ?, ?, ?)',
    id,
    plant.id,
    day,
    stand === null || stand.putAway ? null : versionOn(db, stand.id, day).id,
  );
  return id;
}
