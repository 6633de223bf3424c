import type { ReceivedPhoto } from '../intake/receive-photo.ts';
import type { Services } from '../services.ts';
import { keepUpload, originalPath, picturePath, writeWhole } from '../store/photo-files.ts';
import { addPhoto } from '../store/photos.ts';

/** Width under which the upright copy from the intake is kept; narrower ones are made from it. */
export const WIDEST_PICTURE_PX = 1600;

/** Puts a received file in its place, untouched, with its upright copy, and notes it in the store. */
export async function keepPhoto(
  { db, home }: Pick<Services, 'db' | 'home'>,
  uploadPath: string,
  photo: ReceivedPhoto,
): Promise<void> {
  await writeWhole(home, picturePath(home, photo.sha256, WIDEST_PICTURE_PX), photo.picture);
  await keepUpload(uploadPath, originalPath(home, photo.sha256, photo.format));
  addPhoto(db, {
    sha256: photo.sha256,
    format: photo.format,
    byteCount: photo.byteCount,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    takenAt: photo.takenAt?.localTime ?? null,
    keptAt: new Date().toISOString(),
  });
}
