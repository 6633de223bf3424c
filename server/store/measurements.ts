import { z } from 'zod';
import { METHOD_VERSION } from '../../core/method-version.ts';
import type { PointPx } from '../../core/raster/raster.ts';
import type { PhotoReport } from '../../core/report.ts';
import { type Database, oneRow, run } from './database.ts';
import { photoRow } from './photos.ts';

/** What a measurement leaves in the store. */
export interface Measurement {
  readonly report: PhotoReport;
  readonly outlinePx: readonly PointPx[];
  readonly maskPng: Uint8Array | null;
}

const dueRow = z.object({
  viewId: z.string(),
  plantId: z.string(),
  revision: z.int(),
  fileName: z.string(),
  sha256: z.string(),
  format: photoRow.shape.format,
  turnDeg: z.number().nullable(),
  rimMm: z.number().nullable(),
  emptySha256: z.string().nullable(),
  emptyFormat: photoRow.shape.format.nullable(),
});
/** A view whose turn it is to be measured, with all that is known beside the photo. */
export type DueView = z.infer<typeof dueRow>;

/**
 * Takes the next view to measure and marks it so: never-measured ones first, the grower's own plants before
 * the sample ones, the newest photo first. `null` when nothing waits.
 */
export function takeDueView(db: Database): DueView | null {
  return db.transaction(() => {
    const due = oneRow(
      db,
      dueRow,
      `SELECT views.id AS viewId, plants.id AS plantId, revision, file_name AS fileName,
         photos.sha256, photos.format, turn_deg AS turnDeg, rim_mm AS rimMm,
         stands.empty_photo AS emptySha256, empty.format AS emptyFormat
       FROM views
       JOIN sittings ON sittings.id = views.sitting_id
       JOIN plants ON plants.id = sittings.plant_id
       JOIN stands ON stands.id = sittings.stand_id
       JOIN photos ON photos.sha256 = views.photo
       LEFT JOIN photos AS empty ON empty.sha256 = stands.empty_photo
       WHERE state = 'received' AND removed_at IS NULL
       ORDER BY EXISTS (SELECT 1 FROM measurements WHERE view_id = views.id), plants.sample,
         sittings.day DESC, received_at DESC
       LIMIT 1`,
    );
    if (due) run(db, `UPDATE views SET state = 'measuring' WHERE id = ?`, due.viewId);
    return due;
  })();
}

/** Keeps a measurement; `false`, and nothing kept, when the view's facts have changed since it was taken. */
export function keepMeasurement(db: Database, due: DueView, measurement: Measurement): boolean {
  return db.transaction(() => {
    const current = run(
      db,
      `UPDATE views SET state = 'measured', failure = NULL WHERE id = ? AND revision = ?`,
      due.viewId,
      due.revision,
    );
    if (current === 0) return false;
    run(
      db,
      `INSERT INTO measurements (view_id, method_version, measured_at, report, outline, mask_png)
       VALUES (?, ?, ?, ?, ?, ?)`,
      due.viewId,
      METHOD_VERSION,
      new Date().toISOString(),
      JSON.stringify(measurement.report),
      JSON.stringify(measurement.outlinePx),
      measurement.maskPng,
    );
    return true;
  })();
}

/** Notes that measuring broke down by a fault of ours; `false` when the view waits anew already. */
export function keepFailure(db: Database, due: DueView, failure: string): boolean {
  return (
    run(
      db,
      `UPDATE views SET state = 'failed', failure = ? WHERE id = ? AND revision = ?`,
      failure,
      due.viewId,
      due.revision,
    ) > 0
  );
}

const QUEUE = `UPDATE views SET state = 'received', failure = NULL, revision = revision + 1`;

export function queueView(db: Database, viewId: string): void {
  run(db, `${QUEUE} WHERE id = ?`, viewId);
}

/** Lets every view of a plant be measured anew, also removed ones, should they come back. */
export function queuePlant(db: Database, plantId: string): void {
  run(db, `${QUEUE} WHERE sitting_id IN (SELECT id FROM sittings WHERE plant_id = ?)`, plantId);
}

/** At start: views that a stop left half-measured, and those measured by an older method, wait again. */
export function queueLeftAndOutdated(db: Database): void {
  run(
    db,
    `${QUEUE} WHERE state = 'measuring' OR (state IN ('measured', 'failed') AND ? IS NOT
       (SELECT method_version FROM measurements WHERE view_id = views.id ORDER BY id DESC LIMIT 1))`,
    METHOD_VERSION,
  );
}

const maskRow = z.object({ maskPng: z.instanceof(Uint8Array).nullable() });

/** The newest canopy mask of a view, a white-on-clear PNG. */
export function newestMask(db: Database, viewId: string): Uint8Array | null {
  const row = oneRow(
    db,
    maskRow,
    'SELECT mask_png AS maskPng FROM measurements WHERE view_id = ? ORDER BY id DESC LIMIT 1',
    viewId,
  );
  return row?.maskPng ?? null;
}
