import { z } from 'zod';
import { allRows, type Database, oneRow, run } from './database.ts';

export const photoRow = z.object({
  /** It names the file, so nothing but digits of it is ever taken for one. */
  sha256: z.string().regex(/^[0-9a-f]{64}$/),
  format: z.enum(['jpeg', 'png', 'webp', 'heic']),
  byteCount: z.int(),
  widthPx: z.int(),
  heightPx: z.int(),
  takenAt: z.string().nullable(),
  keptAt: z.string(),
});
/** An original that the store keeps. */
export type PhotoRow = z.infer<typeof photoRow>;

const PHOTO = `SELECT sha256, format, byte_count AS byteCount, width_px AS widthPx, height_px AS heightPx,
  taken_at AS takenAt, kept_at AS keptAt FROM photos`;

export function photoBySha256(db: Database, sha256: string): PhotoRow | null {
  return oneRow(db, photoRow, `${PHOTO} WHERE sha256 = ?`, sha256);
}

export function allPhotos(db: Database): PhotoRow[] {
  return allRows(db, photoRow, PHOTO);
}

const nameRow = photoRow.pick({ sha256: true, format: true });

/** What the originals are called that lie in a folder of that name: their SHA-256 begins with it. */
export function photosOfFolder(db: Database, prefix: string): z.infer<typeof nameRow>[] {
  return allRows(
    db,
    nameRow,
    'SELECT sha256, format FROM photos WHERE sha256 >= ? AND sha256 < ?',
    prefix,
    `${prefix}g`,
  );
}

/** Notes that an original is kept; a photo that is known stays as it was. */
export function addPhoto(db: Database, photo: PhotoRow): void {
  run(
    db,
    `INSERT INTO photos (sha256, format, byte_count, width_px, height_px, taken_at, kept_at)
     VALUES (?, ?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
    photo.sha256,
    photo.format,
    photo.byteCount,
    photo.widthPx,
    photo.heightPx,
    photo.takenAt,
    photo.keptAt,
  );
}
