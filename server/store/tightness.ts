import { z } from 'zod';
import { daySchema } from '../schemas/basics.ts';
import { allRows, type Database } from './database.ts';
import type { PlantRow } from './plants.ts';

const row = z.object({ plantId: z.string(), day: daySchema, tightness: z.number() });
export type TightnessRow = z.infer<typeof row>;

/** How tight the other plants of a plant's kind were at each sitting: of several sides the loosest, as it is told of the plant itself. */
export function tightnessOfKind(
  db: Database,
  { id, kind, sample }: Pick<PlantRow, 'id' | 'kind' | 'sample'>,
): TightnessRow[] {
  // CROSS JOIN keeps the order, plants first; else every photo of the store is read.
  return allRows(
    db,
    row,
    `SELECT plants.id AS plantId, sittings.day, min(readings.tightness) AS tightness
     FROM plants
     CROSS JOIN sittings ON sittings.plant_id = plants.id
     CROSS JOIN views ON views.sitting_id = sittings.id
     CROSS JOIN readings ON readings.view_id = views.id
     WHERE plants.id <> ? AND plants.kind = ? AND plants.sample = ? AND views.removed_at IS NULL
       AND sittings.left_out IS NULL AND not_compared IS NULL AND readings.tightness IS NOT NULL
     GROUP BY plants.id, sittings.day`,
    id,
    kind,
    sample ? 1 : 0,
  );
}
