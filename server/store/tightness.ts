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
  return allRows(
    db,
    row,
    `SELECT plants.id AS plantId, sittings.day, min(json_extract(report, '$.gaps.tightness')) AS tightness
     FROM views
     JOIN sittings ON sittings.id = views.sitting_id
     JOIN plants ON plants.id = sittings.plant_id
     JOIN measurements ON measurements.id =
       (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = views.id)
     WHERE plants.id <> ? AND plants.kind = ? AND plants.sample = ? AND views.removed_at IS NULL
       AND sittings.left_out IS NULL AND json_extract(report, '$.notCompared') IS NULL
       AND json_extract(report, '$.gaps.tightness') IS NOT NULL
     GROUP BY plants.id, sittings.day`,
    id,
    kind,
    sample ? 1 : 0,
  );
}
