import { randomUUID } from 'node:crypto';
import { type FileHandle, mkdir, open, readFile, realpath, rename, rm } from 'node:fs/promises';
import { dirname, isAbsolute, join, relative, sep } from 'node:path';
import type { PhotoFormat } from '../intake/photo-format.ts';
import type { DataHome } from './data-home.ts';

const ENDINGS: Record<PhotoFormat, string> = { jpeg: 'jpg', png: 'png', webp: 'webp', heic: 'heic' };

/** Where an original lies, by its own SHA-256. */
export function originalPath(home: DataHome, sha256: string, format: PhotoFormat): string {
  return join(home.photos, sha256.slice(0, 2), `${sha256}.${ENDINGS[format]}`);
}

/** What pictures are served as. */
export type PictureFormat = 'jpeg' | 'webp';

/** Where the upright copy of a photo at a width lies. */
export function picturePath(
  home: DataHome,
  sha256: string,
  widthPx: number,
  format: PictureFormat = 'jpeg',
): string {
  return join(home.pictures, sha256.slice(0, 2), `${sha256}-${widthPx}.${ENDINGS[format]}`);
}

/** Writes a file so that it is there whole or not at all, also after a power cut. */
export async function writeWhole(home: DataHome, path: string, bytes: Uint8Array): Promise<void> {
  const unfinished = join(home.incoming, `${randomUUID()}.part`);
  try {
    await withFile(unfinished, 'wx', async (file) => {
      await file.writeFile(bytes);
      await file.sync();
    });
    await putInPlace(unfinished, path);
  } finally {
    await rm(unfinished, { force: true });
  }
}

/**
 * Moves a finished upload to its place; both lie on one disk. The place is named by the content, so one that is
 * there already gives way to the same bytes, and is whole again should it have been damaged.
 */
export async function keepUpload(uploadPath: string, path: string): Promise<void> {
  await withFile(uploadPath, 'r+', (file) => file.sync());
  await putInPlace(uploadPath, path);
}

/** The bytes of a picture, `null` when it is not there; a link that leads out of the folder of pictures is none. */
export async function readPicture(home: DataHome, path: string): Promise<Buffer | null> {
  try {
    const real = await realpath(path);
    return (await leadsOutOf(home.pictures, real)) ? null : await readFile(real);
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw fault;
  }
}

/** Whether a path without links lies elsewhere than in a folder. */
export async function leadsOutOf(folder: string, real: string): Promise<boolean> {
  const inside = relative(await realpath(folder), real);
  return inside === '' || inside.split(sep)[0] === '..' || isAbsolute(inside);
}

/** Has a folder's entries on the disk: a file that was made or renamed is there once its folder is. */
export async function syncFolder(folder: string): Promise<void> {
  // A folder cannot be opened there.
  if (process.platform !== 'win32') await withFile(folder, 'r', (entries) => entries.sync());
}

async function putInPlace(from: string, to: string): Promise<void> {
  const made = await mkdir(dirname(to), { recursive: true });
  await rename(from, to);
  await syncFolder(dirname(to));
  if (made !== undefined) await syncFolder(dirname(made));
}

async function withFile<T>(path: string, flags: string, use: (file: FileHandle) => Promise<T>): Promise<T> {
  const file = await open(path, flags);
  try {
    return await use(file);
  } finally {
    await file.close();
  }
}
