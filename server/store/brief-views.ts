import { z } from 'zod';
import { METHOD_VERSION } from '../../core/method-version.ts';
import type { PhotoReport } from '../../core/report.ts';
import { daySchema } from '../schemas/basics.ts';
import { reportSchema } from '../schemas/report.ts';
import { viewStateSchema } from '../schemas/sitting.ts';
import { flag, jsonText } from './columns.ts';
import { allRows, type Database } from './database.ts';
import { NEWEST_SITTINGS } from './views.ts';

/** The trigger that keeps it takes it from a report that was read whole when it was made; by the thousand, it is not read again. */
const keptReport = z.custom<PhotoReport>((value) => typeof value === 'object' && value !== null);

const briefRow = z
  .object({
    id: z.string(),
    sittingId: z.string(),
    day: daySchema,
    leftOut: z.string().nullable(),
    standId: z.string().nullable(),
    turnDeg: z.number().nullable(),
    state: viewStateSchema,
    afterWork: flag,
    methodVersion: z.string().nullable(),
    report: jsonText.pipe(keptReport).nullable(),
    normalLeafFrom: jsonText.pipe(z.array(daySchema)).nullable(),
  })
  .transform((row) => {
    const { report, methodVersion } = row;
    // As with whole views: a report of an older method may have another form.
    const reads =
      report !== null && (methodVersion === METHOD_VERSION || reportSchema.safeParse(report).success);
    if (!reads) return { ...row, report: null };
    const notCompared =
      report.notCompared ?? (row.leftOut === null ? null : `Left out by you: ${row.leftOut}.`);
    return { ...row, report: { ...report, notCompared } };
  });
/**
 * A view with what a plant's past is told by. Its report is brief: the long lists are empty, and what is drawn, the stature and the areas
 * in flower are `null`.
 */
export type BriefView = z.infer<typeof briefRow>;

/** The views of a plant's newest sittings that are not removed, in the same order as `viewsOfPlant`. */
export function briefViews(
  db: Database,
  plantId: string,
  newestSittings = Number.MAX_SAFE_INTEGER,
): BriefView[] {
  return allRows(
    db,
    briefRow,
    `SELECT views.id, sitting_id AS sittingId, sittings.day, sittings.left_out AS leftOut, stand.stand_id AS standId, turn_deg AS turnDeg, state,
       coalesce(views.received_at > sittings.worked_at, 0) AS afterWork, method_version AS methodVersion,
       brief AS report, normal_days AS normalLeafFrom
     FROM sittings JOIN views ON views.sitting_id = sittings.id LEFT JOIN readings ON readings.view_id = views.id
       LEFT JOIN stand_versions AS stand ON stand.id = sittings.stand_version_id
     WHERE sittings.id IN (${NEWEST_SITTINGS}) AND removed_at IS NULL
     ORDER BY sittings.day DESC, turn_deg, received_at, views.rowid`,
    plantId,
    newestSittings,
    0,
  );
}
