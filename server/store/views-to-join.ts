import { z } from 'zod';
import { reportSchema } from '../schemas/report.ts';
import { jsonText } from './columns.ts';
import { allRows, type Database } from './database.ts';
import { BEFORE_WORK } from './worked-sittings.ts';

/** What measuring leaves for joining a view with others. */
export const lensSchema = z.object({
  focalLengthPx: z.number().positive().nullable(),
  cameraDistanceMm: z.number().positive().nullable(),
});

const viewToJoinRow = z.object({
  viewId: z.string(),
  turnDeg: z.number().nullable(),
  report: jsonText.pipe(reportSchema).nullable(),
  maskPng: z.instanceof(Uint8Array).nullable(),
  lens: jsonText.pipe(lensSchema).nullable(),
  /** Of the stand, as it was that day. */
  cameraHeightMm: z.number().nullable(),
});
export type ViewToJoin = z.infer<typeof viewToJoinRow>;

/** The views of a sitting that were taken before the work, with their newest measurements, in the order in which the screen shows them. */
export function viewsToJoin(db: Database, sittingId: string): ViewToJoin[] {
  return allRows(
    db,
    viewToJoinRow,
    `SELECT views.id AS viewId, turn_deg AS turnDeg, report, mask_png AS maskPng, lens,
       stand.camera_height_mm AS cameraHeightMm
     FROM views
     JOIN sittings ON sittings.id = views.sitting_id
     LEFT JOIN stand_versions AS stand ON stand.id = sittings.stand_version_id
     LEFT JOIN measurements ON measurements.id =
       (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = views.id)
     WHERE sitting_id = ? AND removed_at IS NULL AND ${BEFORE_WORK}
     ORDER BY turn_deg, received_at, views.rowid`,
    sittingId,
  );
}
