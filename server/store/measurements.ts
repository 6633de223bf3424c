import { z } from 'zod';
import type { NormalLeaf } from '../../core/foliage/normal-leaf.ts';
import { METHOD_VERSION } from '../../core/method-version.ts';
import type { PointPx } from '../../core/raster/raster.ts';
import type { PhotoReport } from '../../core/report.ts';
import type { PartsOutlines } from '../../core/silhouette/parts-outlines.ts';
import { type Database, oneRow, run } from './database.ts';
import type { DueView } from './due-view.ts';
import type { KnownSources } from './known-sources.ts';
import { rounded, settleNormalLeaf, textOf } from './normal-leaf.ts';
import { noteEnded } from './under-way.ts';
import { turnByCollar } from './views.ts';
import type { lensSchema } from './views-to-join.ts';

/** What a measurement leaves in the store. */
export interface Measurement {
  readonly report: PhotoReport;
  readonly outlinePx: readonly PointPx[];
  readonly partsOutlines: PartsOutlines;
  readonly maskPng: Uint8Array | null;
  readonly partsPng: Uint8Array | null;
  readonly lens: z.infer<typeof lensSchema>;
  readonly leafLook: NormalLeaf | null;
}

/**
 * Keeps a measurement in place of the view's earlier ones; `false`, and nothing kept, when the view's facts have
 * changed since it was taken. An earlier one stays while another photo was measured with its outline.
 */
export function keepMeasurement(
  db: Database,
  due: Pick<DueView, 'viewId' | 'plantId' | 'revision'>,
  measurement: Measurement,
  known: KnownSources,
): boolean {
  return db.transaction(() => {
    noteEnded(db, due.viewId);
    const current = run(
      db,
      `UPDATE views SET state = 'measured', failure = NULL, quiet = 0, look_up = 0 WHERE id = ? AND revision = ?`,
      due.viewId,
      due.revision,
    );
    if (current === 0) return false;
    run(
      db,
      `INSERT INTO measurements (view_id, method_version, measured_at, report, outline, parts, mask_png, parts_png,
         lens, lessons, last_outline, last_outline_days, leaf_look, normal_leaf)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
      due.viewId,
      METHOD_VERSION,
      new Date().toISOString(),
      JSON.stringify(measurement.report),
      JSON.stringify(measurement.outlinePx),
      JSON.stringify(measurement.partsOutlines),
      measurement.maskPng,
      measurement.partsPng,
      JSON.stringify(measurement.lens),
      JSON.stringify(known.lessons),
      known.lastOutline?.measurementId ?? null,
      known.lastOutline?.days ?? null,
      measurement.leafLook && JSON.stringify(rounded(measurement.leafLook)),
      textOf(known.normalLeaf),
    );
    dropSuperseded(db, due.viewId);
    turnByCollar(db, due.viewId);
    settleNormalLeaf(db, due.plantId);
    return true;
  })();
}

function dropSuperseded(db: Database, viewId: string): void {
  run(
    db,
    `DELETE FROM measurements WHERE view_id = ?
       AND id < (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = measurements.view_id)
       AND NOT EXISTS (SELECT 1 FROM measurements AS later WHERE later.last_outline = measurements.id)`,
    viewId,
  );
}

/** Notes that measuring broke down by a fault of ours; `false` when the view waits anew already. */
export function keepFailure(
  db: Database,
  due: Pick<DueView, 'viewId' | 'revision'>,
  failure: string,
): boolean {
  return db.transaction(() => {
    noteEnded(db, due.viewId);
    return (
      run(
        db,
        `UPDATE views SET state = 'failed', failure = ?, quiet = 0 WHERE id = ? AND revision = ?`,
        failure,
        due.viewId,
        due.revision,
      ) > 0
    );
  })();
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
