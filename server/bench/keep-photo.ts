import { rm } from 'node:fs/promises';
import type { ReceivedPhoto } from '../intake/receive-photo.ts';
import type { Services } from '../services.ts';
import { keepUpload, originalPath, picturePath, writeWhole } from '../store/photo-files.ts';
import { addPhoto, photoBySha256 } from '../store/photos.ts';

/** Width under which the upright copy from the intake is kept; narrower ones are made from it. */
export const WIDEST_PICTURE_PX = 1600;

/** The last keeping of each photo that is under way. */
const underWay = new Map<string, Promise<unknown>>();

/**
 * Puts a received file in its place, untouched, with its upright copy, and notes it in the store together with what
 * `note` writes there: one commit, after file and folder are on the disk. What `note` gives back.
 *
 * Notes: when a step fails nothing of the photo stays, unless it was kept before. The same photo is kept by one
 * request at a time, so that a failed one takes nothing away from another.
 */
export async function keepPhoto<Noted>(
  services: Pick<Services, 'db' | 'home' | 'log'>,
  uploadPath: string,
  photo: ReceivedPhoto,
  note: () => Noted,
): Promise<Noted> {
  const before = underWay.get(photo.sha256);
  const keeping = (async () => {
    await before?.catch(() => {});
    return keepAlone(services, uploadPath, photo, note);
  })();
  underWay.set(photo.sha256, keeping);
  try {
    return await keeping;
  } finally {
    if (underWay.get(photo.sha256) === keeping) underWay.delete(photo.sha256);
  }
}

/** Resolves when no photo is being kept: a stop waits for it, so that none is left with its file but without its row. */
export async function whenNoneIsKept(): Promise<void> {
  while (underWay.size > 0) await Promise.allSettled(underWay.values());
}

async function keepAlone<Noted>(
  { db, home, log }: Pick<Services, 'db' | 'home' | 'log'>,
  uploadPath: string,
  photo: ReceivedPhoto,
  note: () => Noted,
): Promise<Noted> {
  const original = originalPath(home, photo.sha256, photo.format);
  const picture = picturePath(home, photo.sha256, WIDEST_PICTURE_PX);
  try {
    await writeWhole(home, picture, photo.picture);
    await keepUpload(uploadPath, original);
    return db.transaction(() => {
      addPhoto(db, {
        sha256: photo.sha256,
        format: photo.format,
        byteCount: photo.byteCount,
        widthPx: photo.widthPx,
        heightPx: photo.heightPx,
        takenAt: photo.takenAt?.localTime ?? null,
        keptAt: new Date().toISOString(),
      });
      return note();
    })();
  } catch (fault) {
    if (photoBySha256(db, photo.sha256) === null) {
      // What cannot be deleted either is set aside at the next start.
      for (const result of await Promise.allSettled(
        [original, picture].map((path) => rm(path, { force: true })),
      )) {
        if (result.status === 'rejected') log.warn({ err: result.reason }, 'a refused photo was left behind');
      }
    }
    throw fault;
  }
}
