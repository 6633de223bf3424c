import { z } from 'zod';
import { daySchema } from '../schemas/basics.ts';
import { allRows, type Database } from './database.ts';
import { BEFORE_WORK } from './worked-sittings.ts';

const flowerRow = z.object({
  plantId: z.string(),
  day: daySchema,
  share: z.number(),
  plusMinus: z.number().nullable(),
});
/** Share of the canopy in flower in one photo. */
export type FlowerRow = z.infer<typeof flowerRow>;

const FLOWER = `SELECT sittings.plant_id AS plantId, sittings.day,
    coalesce(json_extract(report, '$.flower.share'), json_extract(report, '$.canopy.flowerShare'), 0) AS share,
    json_extract(report, '$.flower.plusMinus') AS plusMinus
  FROM views
  JOIN sittings ON sittings.id = views.sitting_id
  JOIN measurements ON measurements.id =
    (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = views.id)
  WHERE views.removed_at IS NULL AND sittings.left_out IS NULL AND ${BEFORE_WORK}
    AND json_extract(report, '$.status') = 'measured'`;

/** Flower in every measured photo that counts, of all plants, by day. */
export function allFlowerReadings(db: Database): FlowerRow[] {
  return allRows(db, flowerRow, `${FLOWER} ORDER BY sittings.day`);
}
