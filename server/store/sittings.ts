import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { daySchema } from '../schemas/basics.ts';
import { type Database, oneRow, run } from './database.ts';
import type { PlantRow } from './plants.ts';

const sittingRow = z.object({ id: z.string(), plantId: z.string(), day: daySchema });
export type SittingRow = z.infer<typeof sittingRow>;

const SITTING = 'SELECT id, plant_id AS plantId, day FROM sittings';

export function sittingById(db: Database, id: string): SittingRow | null {
  return oneRow(db, sittingRow, `${SITTING} WHERE id = ?`, id);
}

/** The plant's sitting of that day, made when there is none yet; its id. */
export function sittingOn(db: Database, plant: Pick<PlantRow, 'id' | 'standId'>, day: Day): string {
  const known = oneRow(db, sittingRow, `${SITTING} WHERE plant_id = ? AND day = ?`, plant.id, day);
  if (known) return known.id;
  const id = randomUUID();
  run(
    db,
    'INSERT INTO sittings (id, plant_id, stand_id, day) VALUES (?, ?, ?, ?)',
    id,
    plant.id,
    plant.standId,
    day,
  );
  return id;
}
