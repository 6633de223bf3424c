import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { daySchema } from '../schemas/basics.ts';
import { allRows, type Database, oneRow, run } from './database.ts';
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

const sittingDay = z.object({ day: daySchema });

/** Days on which a plant was photographed, from a day on, oldest first. */
export function sittingDaysSince(db: Database, plantId: string, since: Day): Day[] {
  return allRows(
    db,
    sittingDay,
    `SELECT day FROM sittings
     WHERE plant_id = ? AND day >= ? AND EXISTS (SELECT 1 FROM views WHERE sitting_id = sittings.id AND removed_at IS NULL)
     ORDER BY day`,
    plantId,
    since,
  ).map(({ day }) => day);
}

const countRow = z.object({ count: z.int() });

/** Sittings of a plant of which a photo is there. */
export function sittingCount(db: Database, plantId: string): number {
  const row = oneRow(
    db,
    countRow,
    `SELECT count(*) AS count FROM sittings
     WHERE plant_id = ? AND EXISTS (SELECT 1 FROM views WHERE sitting_id = sittings.id AND removed_at IS NULL)`,
    plantId,
  );
  return row?.count ?? 0;
}

/** Keeps a sitting out of trend and advice for a reason; `null` takes it back in. */
export function setLeftOut(db: Database, id: string, reason: string | null): void {
  run(db, 'UPDATE sittings SET left_out = ? WHERE id = ?', reason, id);
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
