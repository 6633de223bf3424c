import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { daySchema } from '../schemas/basics.ts';
import { allRows, type Database } from './database.ts';
import type { PlantRow } from './plants.ts';

const idRow = z.object({ id: z.string() });
const row = z.object({ day: daySchema, tightness: z.number() });

/** The other plants of a plant's kind. */
export function othersOfKind(
  db: Database,
  { id, kind, sample }: Pick<PlantRow, 'id' | 'kind' | 'sample'>,
): string[] {
  return allRows(
    db,
    idRow,
    'SELECT id FROM plants WHERE id <> ? AND kind = ? AND sample = ? ORDER BY id',
    id,
    kind,
    sample ? 1 : 0,
  ).map((other) => other.id);
}

/** How tight a plant was at its sittings of some stretches of days, by day: of several sides the loosest, as it is told of the plant itself. */
export function tightnessWithin(
  db: Database,
  plantId: string,
  stretches: readonly { readonly from: Day; readonly to: Day }[],
): z.infer<typeof row>[] {
  // CROSS JOIN keeps the order, stretches first; else every photo of the plant is read.
  return allRows(
    db,
    row,
    `SELECT sittings.day, min(readings.tightness) AS tightness
     FROM json_each(?) AS stretch
     CROSS JOIN sittings ON sittings.plant_id = ?
       AND sittings.day BETWEEN json_extract(stretch.value, '$.from') AND json_extract(stretch.value, '$.to')
     CROSS JOIN views ON views.sitting_id = sittings.id
     CROSS JOIN readings ON readings.view_id = views.id
     WHERE views.removed_at IS NULL AND sittings.left_out IS NULL AND not_compared IS NULL
       AND readings.tightness IS NOT NULL
     GROUP BY sittings.day ORDER BY sittings.day`,
    JSON.stringify(stretches),
    plantId,
  );
}
