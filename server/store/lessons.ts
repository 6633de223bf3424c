import { z } from 'zod';
import { type Database, oneRow, run } from './database.ts';
import { photoRow } from './photos.ts';

const lessonRow = z.object({
  sha256: z.string(),
  format: photoRow.shape.format,
  maskPng: z.instanceof(Uint8Array),
  partsPng: z.instanceof(Uint8Array).nullable(),
});
/** A photo with its accepted canopy. */
export type LessonRow = z.infer<typeof lessonRow>;

/** A measurement as a lesson in colours; `null` when it is no longer kept. */
export function lessonById(db: Database, measurementId: number): LessonRow | null {
  return oneRow(
    db,
    lessonRow,
    `SELECT photos.sha256, photos.format, mask_png AS maskPng, parts_png AS partsPng
     FROM measurements JOIN views ON views.id = measurements.view_id
     JOIN photos ON photos.sha256 = views.photo
     WHERE measurements.id = ? AND mask_png IS NOT NULL`,
    measurementId,
  );
}

const outlineRow = z.object({
  maskPng: z.instanceof(Uint8Array),
  widthPx: z.int(),
  heightPx: z.int(),
  axis: z
    .string()
    .transform((text): unknown => JSON.parse(text))
    .pipe(
      z.object({
        rimLeftPx: z.tuple([z.number(), z.number()]),
        rimRightPx: z.tuple([z.number(), z.number()]),
      }),
    )
    .nullable(),
});
/** A measured outline with the photo's size and the rim's ends in px of the photo. */
export type OutlineRow = z.infer<typeof outlineRow>;

export function outlineById(db: Database, measurementId: number): OutlineRow | null {
  return oneRow(
    db,
    outlineRow,
    `SELECT mask_png AS maskPng, photos.width_px AS widthPx, photos.height_px AS heightPx,
       json_extract(report, '$.axis') AS axis
     FROM measurements JOIN views ON views.id = measurements.view_id
     JOIN photos ON photos.sha256 = views.photo
     WHERE measurements.id = ? AND mask_png IS NOT NULL`,
    measurementId,
  );
}

const coloursRow = z.object({ colours: z.instanceof(Uint8Array) });

/** Colours learned from these measurements, as core encodes them; `null` when they are yet to be learned. */
export function keptColours(db: Database, lessons: readonly number[]): Uint8Array | null {
  const row = oneRow(
    db,
    coloursRow,
    'SELECT colours FROM learned_colours WHERE lessons = ?',
    JSON.stringify(lessons),
  );
  return row?.colours ?? null;
}

export function keepColours(db: Database, lessons: readonly number[], colours: Uint8Array): void {
  run(
    db,
    `INSERT INTO learned_colours (lessons, colours) VALUES (?, ?)
     ON CONFLICT (lessons) DO UPDATE SET colours = excluded.colours`,
    JSON.stringify(lessons),
    colours,
  );
}

/** At start: forgets colours that no kept measurement was made with; they can be learned again. */
export function dropUnusedColours(db: Database): void {
  run(
    db,
    `DELETE FROM learned_colours WHERE NOT EXISTS
       (SELECT 1 FROM measurements WHERE measurements.lessons = learned_colours.lessons AND measurements.lessons <> '[]')`,
  );
}
