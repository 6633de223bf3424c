import { z } from 'zod';
import { allRows, type Database, oneRow } from './database.ts';
import type { DueView } from './due-view.ts';
import { type LearnedNormal, normalLeafFor } from './normal-leaf.ts';

/** From which measurements comes what is known of a plant when one of its photos is measured. */
export interface KnownSources {
  /** Measurements, oldest first, whose accepted outlines teach the plant's colours. */
  readonly lessons: readonly number[];
  readonly lastOutline: { readonly measurementId: number; readonly days: number } | null;
  /** Always as it is known now: it has no say in the outline that strokes build on. */
  readonly normalLeaf: LearnedNormal | null;
}

export const LOOK_BACK = {
  /** Accepted photos that teach the colours, the newest of them. */
  lessons: 8,
  /** Age up to which an outline says something about today's. */
  days: 28,
  /** Confidence from which an outline is relied on though nobody called it right. */
  confidence: 0.9,
};

/** The newest measurement of each view of a plant that has a canopy, from days before another view's. */
const EARLIER = `FROM views
  JOIN sittings ON sittings.id = views.sitting_id
  JOIN photos ON photos.sha256 = views.photo
  JOIN measurements ON measurements.id =
    (SELECT max(newest.id) FROM measurements AS newest WHERE newest.view_id = views.id)
  WHERE sittings.plant_id = ? AND sittings.day < ? AND removed_at IS NULL AND mask_png IS NOT NULL`;

const idRow = z.object({ id: z.int() });
const lastRow = z.object({ measurementId: z.int(), days: z.int() });

/** Looks up what is known of a plant by an earlier day: no photo teaches itself, nor one of its own sitting. */
export function lookUpKnown(db: Database, view: DueView): KnownSources {
  const lessons = allRows(
    db,
    idRow,
    `SELECT measurements.id ${EARLIER} AND accepted_at IS NOT NULL
     ORDER BY sittings.day DESC, turn_deg, received_at, views.rowid LIMIT ?`,
    view.plantId,
    view.day,
    LOOK_BACK.lessons,
  );
  const lastOutline = oneRow(
    db,
    lastRow,
    `SELECT measurements.id AS measurementId,
       CAST(round(julianday(?) - julianday(sittings.day)) AS INTEGER) AS days
     ${EARLIER} AND julianday(?) - julianday(sittings.day) <= ?
       AND turn_deg IS ? AND sittings.stand_version_id IS ? AND photos.width_px = ? AND photos.height_px = ?
       AND json_extract(report, '$.status') = 'measured'
       AND (accepted_at IS NOT NULL OR json_extract(report, '$.confidence') >= ?)
     ORDER BY accepted_at IS NULL, sittings.day DESC, received_at DESC, views.rowid DESC LIMIT 1`,
    view.day,
    view.plantId,
    view.day,
    view.day,
    LOOK_BACK.days,
    view.turnDeg,
    view.standVersionId,
    view.widthPx,
    view.heightPx,
    LOOK_BACK.confidence,
  );
  return {
    lessons: lessons.map(({ id }) => id).reverse(),
    lastOutline,
    normalLeaf: normalLeafFor(db, view.plantId, view.day),
  };
}

const usedRow = z.object({
  lessons: z
    .string()
    .transform((text): unknown => JSON.parse(text))
    .pipe(z.array(z.int())),
  measurementId: z.int().nullable(),
  days: z.int().nullable(),
});

/** What a view was measured with last, so that a stroke changes what it is drawn over and nothing else. */
export function knownUsedLast(
  db: Database,
  { viewId, plantId, day }: Pick<DueView, 'viewId' | 'plantId' | 'day'>,
): KnownSources | null {
  const used = oneRow(
    db,
    usedRow,
    `SELECT lessons, last_outline AS measurementId, last_outline_days AS days
     FROM measurements WHERE view_id = ? ORDER BY id DESC LIMIT 1`,
    viewId,
  );
  if (used === null) return null;
  const { lessons, measurementId, days } = used;
  return {
    lessons,
    lastOutline: measurementId === null || days === null ? null : { measurementId, days },
    normalLeaf: normalLeafFor(db, plantId, day),
  };
}
