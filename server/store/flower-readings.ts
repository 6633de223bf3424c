import { z } from 'zod';
import { daySchema } from '../schemas/basics.ts';
import { allRows, type Database } from './database.ts';

const flowerRow = z.object({
  day: daySchema,
  share: z.number(),
  plusMinus: z.number().nullable(),
});
/** Share of the canopy in flower in one photo. */
export type FlowerRow = z.infer<typeof flowerRow>;

/** Flower in every measured photo of a plant that counts, by day. */
export function flowerReadingsOf(db: Database, plantId: string): FlowerRow[] {
  return allRows(
    db,
    flowerRow,
    `SELECT sittings.day, coalesce(flower_share, 0) AS share, flower_plus_minus AS plusMinus
     FROM sittings JOIN views ON views.sitting_id = sittings.id JOIN readings ON readings.view_id = views.id
     WHERE sittings.plant_id = ? AND views.removed_at IS NULL AND sittings.left_out IS NULL
       AND NOT coalesce(views.received_at > sittings.worked_at, 0)
       AND status = 'measured'
     ORDER BY sittings.day`,
    plantId,
  );
}
