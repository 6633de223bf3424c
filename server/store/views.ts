import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import type { Day } from '../../core/day/day.ts';
import { METHOD_VERSION } from '../../core/method-version.ts';
import type { PointPx } from '../../core/raster/raster.ts';
import type { PartsOutlines } from '../../core/silhouette/parts-outlines.ts';
import { OLDER_METHOD, UNREAD } from '../older-method-words.ts';
import { daySchema } from '../schemas/basics.ts';
import { reportSchema } from '../schemas/report.ts';
import { rimByHandSchema } from '../schemas/rim-by-hand.ts';
import { viewStateSchema } from '../schemas/sitting.ts';
import { strokeSchema } from '../schemas/stroke.ts';
import { flag, jsonText } from './columns.ts';
import { allRows, type Database, oneRow, run } from './database.ts';
import { photoRow } from './photos.ts';

/** Points by the hundred for each view: checked in one pass, which takes a fiftieth of a schema for each point. */
const pointsRow = z.custom<readonly PointPx[]>((value) => Array.isArray(value) && value.every(isPoint));
const loopsRow = z.custom<readonly (readonly PointPx[])[]>(
  (value) => Array.isArray(value) && value.every((loop) => Array.isArray(loop) && loop.every(isPoint)),
);
const partsRow = z.object({
  flower: loopsRow,
  pot: loopsRow,
  soil: loopsRow,
  support: loopsRow,
}) satisfies z.ZodType<PartsOutlines>;

function isPoint(value: unknown): value is PointPx {
  return Array.isArray(value) && value.length === 2 && value.every((at) => typeof at === 'number');
}

const takenFrom = z.enum(['exif', 'upload', 'grower']);

const joinedRow = z.object({
  id: z.string(),
  sittingId: z.string(),
  plantId: z.string(),
  day: daySchema,
  standVersionId: z.int().nullable(),
  standId: z.string().nullable(),
  standVersion: z.int().nullable(),
  /** Why the grower keeps the sitting out of trend and advice; `null` when it counts. */
  leftOut: z.string().nullable(),
  sha256: z.string(),
  format: photoRow.shape.format,
  widthPx: z.int(),
  heightPx: z.int(),
  fileName: z.string(),
  turnDeg: z.number().nullable(),
  turnFrom: z.enum(['grower', 'collar']).nullable(),
  takenAt: z.string().nullable(),
  takenFrom,
  state: viewStateSchema,
  failure: z.string().nullable(),
  revision: z.int(),
  removedAt: z.string().nullable(),
  measurementId: z.int().nullable(),
  methodVersion: z.string().nullable(),
  report: jsonText.nullable(),
  outlinePx: jsonText.pipe(pointsRow).nullable(),
  parts: jsonText.pipe(partsRow).nullable(),
  /** Days that its own normal leaf was learned from; `null` when its leaf was judged by what is usual. */
  normalLeafFrom: jsonText.pipe(z.array(daySchema)).nullable(),
  strokes: jsonText.pipe(z.array(strokeSchema)),
  /** The rim's ends as the grower set them; `null` for those found. */
  rimByHand: jsonText.pipe(rimByHandSchema).nullable(),
  /** When the grower said that the outline is right. */
  acceptedAt: z.string().nullable(),
  hasMask: flag,
  /** It came in after a cut of its sitting's list was ticked off. */
  afterWork: flag,
});

/**
 * A report of an older method may have another form than today's: it is then left out, until the photo is measured anew. One of today's method must read.
 */
const viewRow = joinedRow.transform((row) => {
  const outdated = row.methodVersion !== METHOD_VERSION;
  if (row.report === null || (outdated && !reportSchema.safeParse(row.report).success)) {
    const unread = row.report !== null && row.state === 'measured';
    return { ...row, report: null, ...(unread ? { state: 'failed' as const, failure: UNREAD } : {}) };
  }
  const report = reportSchema.parse(row.report);
  const notCompared =
    report.notCompared ?? (row.leftOut === null ? null : `Left out by you: ${row.leftOut}.`);
  const notes = outdated ? [OLDER_METHOD, ...report.notes] : report.notes;
  return { ...row, report: { ...report, notCompared, notes } };
});
/** A view with its sitting's day, its photo's facts and its newest measurement. */
export type ViewRow = z.infer<typeof viewRow>;

const viewDrawn = (
  outline: string,
  parts: string,
) => `SELECT views.id, sitting_id AS sittingId, sittings.plant_id AS plantId, sittings.day,
    stand.id AS standVersionId, stand.stand_id AS standId, stand.number AS standVersion,
    sittings.left_out AS leftOut, photos.sha256, photos.format, photos.width_px AS widthPx, photos.height_px AS heightPx,
    file_name AS fileName, turn_deg AS turnDeg, turn_from AS turnFrom, views.taken_at AS takenAt, taken_from AS takenFrom,
    state, failure, revision, removed_at AS removedAt, strokes, rim_by_hand AS rimByHand, accepted_at AS acceptedAt, ${parts} AS parts,
    json_extract(normal_leaf, '$.days') AS normalLeafFrom,
    measurements.id AS measurementId, method_version AS methodVersion, report, ${outline} AS outlinePx,
    mask_png IS NOT NULL AS hasMask, coalesce(views.received_at > sittings.worked_at, 0) AS afterWork
  FROM views
  JOIN sittings ON sittings.id = views.sitting_id
  JOIN photos ON photos.sha256 = views.photo
  LEFT JOIN stand_versions AS stand ON stand.id = sittings.stand_version_id
  LEFT JOIN measurements ON measurements.id =
    (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = views.id)`;
const VIEW = viewDrawn('outline', 'parts');
/** Without what is drawn on the photos, which is most of what a view weighs. */
const UNDRAWN = viewDrawn('NULL', 'NULL');

/** The newest sittings of a plant of which a photo is there: takes the plant, how many, and how many newer ones are passed over. */
export const NEWEST_SITTINGS = `SELECT id FROM sittings
  WHERE plant_id = ? AND EXISTS (SELECT 1 FROM views AS there WHERE there.sitting_id = sittings.id AND there.removed_at IS NULL)
  ORDER BY day DESC LIMIT ? OFFSET ?`;

/** A view, also one that was removed. */
export function viewById(db: Database, id: string): ViewRow | null {
  return oneRow(db, viewRow, `${VIEW} WHERE views.id = ?`, id);
}

/** Some of a plant's sittings, counted from the newest. */
export interface NewestSittings {
  readonly count: number;
  /** Newer ones that are passed over; none when left out. */
  readonly after?: number;
}

/** The views of a plant's newest sittings, in the same order as `viewsOfPlant`; on demand without what is drawn on the photos. */
export function viewsOfNewestSittings(
  db: Database,
  plantId: string,
  { count, after = 0, drawn = true }: NewestSittings & { readonly drawn?: boolean },
): ViewRow[] {
  return allRows(
    db,
    viewRow,
    `${drawn ? VIEW : UNDRAWN} WHERE removed_at IS NULL AND sittings.id IN (${NEWEST_SITTINGS})
     ORDER BY sittings.day DESC, turn_deg, received_at, views.rowid`,
    plantId,
    count,
    after,
  );
}

/** The views of a plant's sittings of these days, both included, in the same order as `viewsOfPlant`. */
export function viewsBetween(
  db: Database,
  plantId: string,
  { from, to }: { readonly from: Day; readonly to: Day },
): ViewRow[] {
  return allRows(
    db,
    viewRow,
    `${VIEW} WHERE sittings.plant_id = ? AND sittings.day BETWEEN ? AND ? AND removed_at IS NULL
     ORDER BY sittings.day DESC, turn_deg, received_at, views.rowid`,
    plantId,
    from,
    to,
  );
}

/** A plant's views that are not removed: newest day first, in a day by turn and arrival. */
export function viewsOfPlant(db: Database, plantId: string): ViewRow[] {
  return allRows(
    db,
    viewRow,
    `${VIEW} WHERE sittings.plant_id = ? AND removed_at IS NULL
     ORDER BY sittings.day DESC, turn_deg, received_at, views.rowid`,
    plantId,
  );
}

/** The newest view of a plant that was measured and counts, without what is drawn on it; `null` when there is none. */
export function newestMeasuredView(db: Database, plantId: string): ViewRow | null {
  return oneRow(
    db,
    viewRow,
    // Sittings are looked at from the newest on; sorting the views of all of them takes thousands of rows.
    `${UNDRAWN} WHERE views.removed_at IS NULL AND sittings.id =
       (SELECT counting.id FROM sittings AS counting
        WHERE counting.plant_id = ? AND counting.left_out IS NULL AND EXISTS
          (SELECT 1 FROM views AS seen JOIN readings AS reading ON reading.view_id = seen.id
           WHERE seen.sitting_id = counting.id AND seen.removed_at IS NULL AND reading.status = 'measured')
        ORDER BY counting.day DESC LIMIT 1)
       AND (SELECT status FROM readings WHERE view_id = views.id) = 'measured'
     ORDER BY turn_deg, received_at, views.rowid LIMIT 1`,
    plantId,
  );
}

/** The view that shows a photo now; a photo is on the bench once. */
export function viewOfPhoto(db: Database, sha256: string): ViewRow | null {
  return oneRow(db, viewRow, `${VIEW} WHERE photos.sha256 = ? AND removed_at IS NULL`, sha256);
}

/** The view of this photo that was last removed from this plant. */
export function removedViewOfPhoto(db: Database, sha256: string, plantId: string): ViewRow | null {
  return oneRow(
    db,
    viewRow,
    `${VIEW} WHERE photos.sha256 = ? AND sittings.plant_id = ? AND removed_at IS NOT NULL
     ORDER BY removed_at DESC`,
    sha256,
    plantId,
  );
}

export interface NewView {
  readonly sittingId: string;
  readonly sha256: string;
  readonly fileName: string;
  readonly turnDeg: number | null;
  readonly takenAt: string | null;
  readonly takenFrom: ViewRow['takenFrom'];
}

/** Adds a view, waiting to be measured; its id. */
export function addView(db: Database, view: NewView): string {
  const id = randomUUID();
  run(
    db,
    `INSERT INTO views (id, sitting_id, photo, file_name, turn_deg, turn_from, taken_at, taken_from, received_at, state)
     VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, 'received')`,
    id,
    view.sittingId,
    view.sha256,
    view.fileName,
    view.turnDeg,
    view.turnDeg === null ? null : 'grower',
    view.takenAt,
    view.takenFrom,
    new Date().toISOString(),
  );
  return id;
}

/** Takes a view to another sitting, with whose word its day now is. */
export function moveView(
  db: Database,
  id: string,
  sittingId: string,
  takenFrom: ViewRow['takenFrom'] = 'grower',
): void {
  run(db, 'UPDATE views SET sitting_id = ?, taken_from = ? WHERE id = ?', sittingId, takenFrom, id);
}

/** The grower's word on a view's turn; without it the collar's counts, where one was read. */
export function turnView(db: Database, id: string, turnDeg: number | null): void {
  const from = turnDeg === null ? null : 'grower';
  run(db, 'UPDATE views SET turn_deg = ?, turn_from = ? WHERE id = ?', turnDeg, from, id);
  if (turnDeg === null) turnByCollar(db, id);
}

/** Gives a view whose turn the grower did not tell the one that the collar in its newest measurement shows, or none. */
export function turnByCollar(db: Database, id: string): void {
  run(
    db,
    `UPDATE views SET turn_deg = newest.turn, turn_from = CASE WHEN newest.turn IS NOT NULL THEN 'collar' END
     FROM (SELECT mod(round(json_extract(report, '$.collar.turnDeg'), 1), 360) AS turn
           FROM measurements WHERE view_id = ? ORDER BY id DESC LIMIT 1) AS newest
     WHERE views.id = ? AND turn_from IS NOT 'grower'`,
    id,
    id,
  );
}

export function removeView(db: Database, id: string): void {
  run(db, 'UPDATE views SET removed_at = ? WHERE id = ?', new Date().toISOString(), id);
}

export function restoreView(db: Database, id: string): void {
  run(db, 'UPDATE views SET removed_at = NULL WHERE id = ?', id);
}
