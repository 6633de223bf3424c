import type { Services } from '../services.ts';
import {
  originalPath,
  type PictureFormat,
  picturePath,
  readPicture,
  writeWhole,
} from '../store/photo-files.ts';
import { photoBySha256 } from '../store/photos.ts';
import { WIDEST_PICTURE_PX } from './keep-photo.ts';

/** The upright copy of a photo, at most `widthPx` across; made once, and again should it be lost. The widest is JPEG only, as it was made when the photo came. */
export async function uprightPicture(
  services: Pick<Services, 'db' | 'home' | 'receive'>,
  sha256: string,
  widthPx: number,
  format: PictureFormat = 'jpeg',
): Promise<Uint8Array> {
  const isWidest = widthPx === WIDEST_PICTURE_PX;
  const path = picturePath(services.home, sha256, widthPx, isWidest ? 'jpeg' : format);
  const made = await readPicture(services.home, path);
  if (made) return made;
  const picture = isWidest
    ? await pictureOfOriginal(services, sha256)
    : await narrowed(await uprightPicture(services, sha256, WIDEST_PICTURE_PX), widthPx, format);
  await writeWhole(services.home, path, picture);
  return picture;
}

async function pictureOfOriginal(
  { db, home, receive }: Pick<Services, 'db' | 'home' | 'receive'>,
  sha256: string,
): Promise<Uint8Array> {
  const photo = photoBySha256(db, sha256);
  if (photo === null) throw new RangeError(`Expected a photo of the store but received ${sha256}`);
  const received = await receive({ path: originalPath(home, sha256, photo.format) });
  if (!received.ok) throw new Error(`The original ${sha256} can no longer be read: ${received.hint}`);
  // A file that took its place, or a link that leads elsewhere, is not what the grower put in.
  if (received.sha256 !== sha256)
    throw new RangeError(`Expected the original ${sha256} as it was kept but read another file`);
  return received.picture;
}

/** What makes pictures is loaded with the first one. */
async function narrowed(picture: Uint8Array, widthPx: number, format: PictureFormat): Promise<Uint8Array> {
  const { narrowPicture } = await import('../intake/encode-picture.ts');
  return narrowPicture(picture, widthPx, format);
}
