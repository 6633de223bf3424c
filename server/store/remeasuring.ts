import { z } from 'zod';
import { flag } from './columns.ts';
import { allRows, type Database, oneRow, run } from './database.ts';

const runRow = z.object({ total: z.int(), stopped: flag, sittingId: z.string().nullable() });
/** How far measuring anew has come, as the next start finds it. */
export type RemeasuringRun = z.infer<typeof runRow>;

const outdatedRow = z.object({ viewId: z.string(), sittingId: z.string() });
/** A view whose numbers come from another method than today's. */
export type OutdatedView = z.infer<typeof outdatedRow>;

/** Takes the method's version twice. Removed views stay as they are; they are among these when they come back. */
const OUTDATED_VIEW = `JOIN views ON views.id = readings.view_id
  WHERE (method_version < ? OR method_version > ?) AND +state = 'measured' AND removed_at IS NULL`;

/** CROSS JOIN keeps the order, readings by their method first: else every photo of the store is looked at when none is outdated. */
const OUTDATED = `FROM readings CROSS ${OUTDATED_VIEW}`;

/** The run that brings photos to this method; `null` before the first. */
export function remeasuringRun(db: Database, methodVersion: string): RemeasuringRun | null {
  return oneRow(
    db,
    runRow,
    'SELECT total, stopped, sitting_id AS sittingId FROM remeasuring WHERE id = 1 AND method_version = ?',
    methodVersion,
  );
}

/** Keeps how far the run is. A sitting that is left is looked at again, so that it is joined from its newest numbers. */
export function keepRemeasuringRun(
  db: Database,
  methodVersion: string,
  { total, stopped, sittingId }: RemeasuringRun,
): void {
  db.transaction(() => {
    run(
      db,
      `INSERT OR IGNORE INTO sittings_to_look_at
       SELECT sitting_id FROM remeasuring WHERE sitting_id IS NOT NULL AND sitting_id IS NOT ?`,
      sittingId,
    );
    run(
      db,
      `INSERT INTO remeasuring (id, method_version, total, stopped, sitting_id) VALUES (1, ?, ?, ?, ?)
       ON CONFLICT DO UPDATE SET method_version = excluded.method_version, total = excluded.total,
         stopped = excluded.stopped, sitting_id = excluded.sitting_id`,
      methodVersion,
      total,
      stopped ? 1 : 0,
      sittingId,
    );
  })();
}

/** At start: a sitting that a stop left half-way may be joined, should nobody go on with it. */
export function leaveSitting(db: Database): void {
  run(
    db,
    'INSERT OR IGNORE INTO sittings_to_look_at SELECT sitting_id FROM remeasuring WHERE sitting_id IS NOT NULL',
  );
  run(db, 'UPDATE remeasuring SET sitting_id = NULL WHERE sitting_id IS NOT NULL');
}

/**
 * Views measured by another method: the grower's own plants before the sample ones, one plant after the other so that no
 * trend is long of two methods, a plant's oldest sitting first, since later photos look back on earlier ones.
 */
export function outdatedViews(db: Database, methodVersion: string): OutdatedView[] {
  return allRows(
    db,
    outdatedRow,
    `SELECT viewId, sittingId FROM (
       SELECT views.id AS viewId, sitting_id AS sittingId, turn_deg, received_at, views.rowid AS place ${OUTDATED}
     ) AS outdated
     CROSS JOIN sittings ON sittings.id = outdated.sittingId
     CROSS JOIN plants ON plants.id = sittings.plant_id
     ORDER BY sample, put_away, plants.created_at DESC, plants.id, day, turn_deg, received_at, place`,
    methodVersion,
    methodVersion,
  );
}

const countRow = z.object({ count: z.int() });

/** How many views are measured by another method. */
export function countOutdated(db: Database, methodVersion: string): number {
  return (
    oneRow(db, countRow, `SELECT count(*) AS count ${OUTDATED}`, methodVersion, methodVersion)?.count ?? 0
  );
}

/** Whether a view is still measured by another method, and nothing else has been asked for it meanwhile. */
export function isOutdated(db: Database, viewId: string, methodVersion: string): boolean {
  return (
    oneRow(
      db,
      countRow,
      `SELECT count(*) AS count FROM readings ${OUTDATED_VIEW} AND views.id = ?`,
      methodVersion,
      methodVersion,
      viewId,
    )?.count === 1
  );
}
