import { z } from 'zod';
import { daySchema } from '../schemas/basics.ts';
import { rimByHandSchema } from '../schemas/rim-by-hand.ts';
import { standSheetSchema } from '../schemas/stand.ts';
import { strokeSchema } from '../schemas/stroke.ts';
import { flag, jsonText } from './columns.ts';
import { type Database, oneRow, run } from './database.ts';
import { photoRow } from './photos.ts';
import { leaveAsideWhatEndsTheProgram, noteBegun, noteEnded, viewsLeftAside } from './under-way.ts';

const dueRow = z.object({
  viewId: z.string(),
  plantId: z.string(),
  day: daySchema,
  revision: z.int(),
  state: z.string(),
  fileName: z.string(),
  sha256: z.string(),
  format: photoRow.shape.format,
  widthPx: z.int(),
  heightPx: z.int(),
  keptAt: z.string(),
  turnDeg: z.number().nullable(),
  rimMm: z.number().nullable(),
  /** The stand without a plant: the stand's own photo, else the plant's. */
  emptySha256: z.string().nullable(),
  emptyFormat: photoRow.shape.format.nullable(),
  /** The version of the stand that the photo was taken on; `null` for none. */
  standVersionId: z.int().nullable(),
  /** What the photo is brought in line with: the empty photo, else the first one taken on the stand. */
  referenceSha256: z.string().nullable(),
  referenceFormat: photoRow.shape.format.nullable(),
  /** Only where it gives the scale. */
  sheet: jsonText.pipe(standSheetSchema).nullable(),
  cameraDistanceMm: z.number().nullable(),
  strokes: jsonText.pipe(z.array(strokeSchema)),
  rimByHand: jsonText.pipe(rimByHandSchema).nullable(),
  quiet: flag,
  /** What is known beside the photo is to be looked up; else strokes build on what was used last. */
  lookUp: flag,
});
/** A view to be measured, with all the facts beside its photo. */
export type DueView = z.infer<typeof dueRow>;

const DUE = `SELECT views.id AS viewId, plants.id AS plantId, sittings.day, revision, state,
    file_name AS fileName, photos.sha256, photos.format, photos.width_px AS widthPx,
    photos.height_px AS heightPx, photos.kept_at AS keptAt, turn_deg AS turnDeg, rim_mm AS rimMm,
    empty.sha256 AS emptySha256, empty.format AS emptyFormat, stand.id AS standVersionId,
    reference.sha256 AS referenceSha256, reference.format AS referenceFormat,
    CASE stand.scale_from WHEN 'sheet' THEN stand.sheet END AS sheet,
    stand.camera_distance_mm AS cameraDistanceMm, strokes, rim_by_hand AS rimByHand, quiet, look_up AS lookUp
  FROM views
  JOIN sittings ON sittings.id = views.sitting_id
  JOIN plants ON plants.id = sittings.plant_id
  JOIN photos ON photos.sha256 = views.photo
  LEFT JOIN stand_versions AS stand ON stand.id = sittings.stand_version_id
  LEFT JOIN photos AS empty ON empty.sha256 = COALESCE(stand.empty_photo, plants.empty_photo)
  LEFT JOIN photos AS reference ON reference.sha256 =
    CASE WHEN stand.id IS NULL THEN plants.empty_photo
      ELSE COALESCE(stand.empty_photo, stand.first_photo) END`;

/** The facts of one view; `null` when there is no such view. */
export function dueViewById(db: Database, viewId: string): DueView | null {
  return oneRow(db, dueRow, `${DUE} WHERE views.id = ?`, viewId);
}

/**
 * Takes the next view to measure and marks it so: what the grower asked for before what is only brought up to
 * date, never-measured ones first, the grower's own plants before the sample ones, the newest photo first.
 * A photo brought up to date waits for the plant's earlier ones, whose outlines it looks back on, so that the
 * result does not hang on which thread was quicker. `null` when nothing may be taken.
 */
export function takeDueView(db: Database, { quietToo }: { readonly quietToo: boolean }): DueView | null {
  return db.transaction(() => {
    const due = oneRow(
      db,
      dueRow,
      `${DUE}
       WHERE state = 'received' AND removed_at IS NULL AND (quiet = 0 OR ?)
         AND NOT (quiet = 1 AND EXISTS (
           SELECT 1 FROM views AS other JOIN sittings AS earlier ON earlier.id = other.sitting_id
           WHERE earlier.plant_id = plants.id AND earlier.day < sittings.day
             AND other.removed_at IS NULL AND other.state IN ('received', 'measuring')))
       ORDER BY quiet, EXISTS (SELECT 1 FROM measurements WHERE view_id = views.id), plants.sample,
         CASE WHEN quiet THEN sittings.day END, sittings.day DESC, received_at DESC
       LIMIT 1`,
      quietToo ? 1 : 0,
    );
    if (due) {
      run(db, `UPDATE views SET state = 'measuring' WHERE id = ?`, due.viewId);
      noteBegun(db, due.viewId);
    }
    return due;
  })();
}

/** The start of every statement that lets views be measured anew. */
export const QUEUE = `UPDATE views SET state = 'received', failure = NULL, revision = revision + 1, look_up = 1`;

export function queueView(db: Database, viewId: string): void {
  noteEnded(db, viewId);
  run(db, `${QUEUE}, quiet = 0 WHERE id = ?`, viewId);
}

/** Lets every view of a plant be measured anew, also removed ones, should they come back. */
export function queuePlant(db: Database, plantId: string): void {
  run(db, `${QUEUE}, quiet = 0 WHERE sitting_id IN (SELECT id FROM sittings WHERE plant_id = ?)`, plantId);
}

/**
 * Quietly lets the views after `day` be measured anew, since what is known of the plant has changed. Those whose
 * outline the grower called right stay as they are, and none that is measured so queues another: no loops.
 */
export function queueLaterViews(db: Database, plantId: string, day: string): void {
  run(
    db,
    `${QUEUE}, quiet = (state IN ('measured', 'failed') OR quiet)
     WHERE accepted_at IS NULL AND removed_at IS NULL
       AND sitting_id IN (SELECT id FROM sittings WHERE plant_id = ? AND day > ?)`,
    plantId,
    day,
  );
}

/**
 * At start: views that a stop left half-measured, and those that an older method failed on, wait again; not those in
 * whose midst the program ended each time: `leftAside` says so to the grower.
 */
export function queueLeftAndFailed(
  db: Database,
  { methodVersion, leftAside }: { readonly methodVersion: string; readonly leftAside: string },
): void {
  db.transaction(() => {
    leaveAsideWhatEndsTheProgram(db, leftAside);
    run(
      db,
      `${QUEUE} WHERE (state = 'measuring'
         OR (state = 'failed' AND NOT EXISTS
           (SELECT 1 FROM readings WHERE view_id = views.id AND method_version = ?)))
         AND id NOT IN (SELECT value FROM json_each(?))`,
      methodVersion,
      JSON.stringify(viewsLeftAside(db)),
    );
  })();
}

/** Keeps a view's strokes and takes it for measuring at once. The outline they change is no longer the one called right. */
export function setStrokes(db: Database, viewId: string, strokes: DueView['strokes']): void {
  run(
    db,
    `UPDATE views SET strokes = ?, accepted_at = NULL, look_up = look_up OR state = 'received',
       state = 'measuring', failure = NULL, revision = revision + 1
     WHERE id = ?`,
    JSON.stringify(strokes),
    viewId,
  );
}

/** Keeps the rim as the grower set it, or takes that back, and takes the view for measuring at once. The outline stays the one it is. */
export function setRimByHand(db: Database, viewId: string, rim: DueView['rimByHand']): void {
  run(
    db,
    `UPDATE views SET rim_by_hand = ?, look_up = look_up OR state = 'received', state = 'measuring', failure = NULL,
       revision = revision + 1
     WHERE id = ?`,
    rim === null ? null : JSON.stringify(rim),
    viewId,
  );
}

/** The grower's word on a view's outline. */
export function setAccepted(db: Database, viewId: string, accepted: boolean): void {
  run(
    db,
    'UPDATE views SET accepted_at = ? WHERE id = ?',
    accepted ? new Date().toISOString() : null,
    viewId,
  );
}
