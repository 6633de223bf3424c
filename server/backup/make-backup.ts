import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { mkdir, readFile, rename, rm, stat } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import type { Backup } from '../schemas/keeping.ts';
import { copyDatabase } from '../store/copy-database.ts';
import type { DataHome } from '../store/data-home.ts';
import { DATABASE_FILE, openToRead } from '../store/database.ts';
import { storedNumber } from '../store/migrate.ts';
import { originalPath } from '../store/photo-files.ts';
import { allPhotos, type PhotoRow } from '../store/photos.ts';
import { allPlants } from '../store/plants.ts';
import { diskWords, linked, syncFile, syncFolders, writeNew } from './disk.ts';
import { ABOUT, type ListedFile, MANIFEST, manifestText, sha256OfFile } from './manifest.ts';
import { backupsIn, nameOfMoment, thinOut } from './rotation.ts';

/** What to back up, where to, and how many backups stay. */
export interface BackupTask {
  readonly home: DataHome;
  readonly folder: string;
  readonly keepCount: number;
}

export type BackupOutcome =
  | { readonly ok: true; readonly backup: Backup }
  | { readonly ok: false; readonly words: string };

/**
 * Makes a backup of a store, in use or not: the database as of one moment, then the originals it names, then the list of
 * every file with its SHA-256. It gets its name when all of it is on the disk; older ones make room after that.
 *
 * Notes: originals are copied, so that what spoils one spares the other, and shared between backups by hard links where
 * the disk has them. One whose bytes are no longer those it was kept with is left out and named.
 */
export async function makeBackup({ home, folder, keepCount }: BackupTask): Promise<BackupOutcome> {
  const moment = new Date();
  let name = nameOfMoment(moment);
  for (let k = 2; existsSync(join(folder, name)); k += 1) name = `${nameOfMoment(moment)}-${k}`;
  const unfinished = join(folder, `${name}.part`);
  try {
    await mkdir(unfinished, { recursive: true });
    const earlier = (await backupsIn(folder))[0];
    const database = join(unfinished, DATABASE_FILE);
    await copyDatabase(join(home.root, DATABASE_FILE), database);
    await syncFile(database);
    const { photos, plantCount, storeNumber } = readCopy(database);

    const files: ListedFile[] = [];
    const leftOut: string[] = [];
    for (const photo of photos) {
      const original = originalPath(home, photo.sha256, photo.format);
      const path = relative(home.root, original);
      const before = earlier ? join(folder, earlier.name, path) : null;
      const kept =
        (before !== null &&
          (await isAsLong(before, photo)) &&
          (await linked(before, join(unfinished, path)))) ||
        (await copyWhole(original, join(unfinished, path), photo));
      if (kept) files.push({ path: path.split(sep).join('/'), sha256: photo.sha256 });
      else leftOut.push(photo.sha256);
    }

    const about: Backup = {
      name,
      madeAt: moment.toISOString(),
      storeNumber,
      plantCount,
      photoCount: files.length,
      leftOut,
      byteCount: photos.reduce((sum, { byteCount }) => sum + byteCount, (await stat(database)).size),
    };
    const aboutText = `${JSON.stringify(about, null, 2)}\n`;
    await writeNew(join(unfinished, ABOUT), aboutText);
    files.push({ path: ABOUT, sha256: createHash('sha256').update(aboutText).digest('hex') });
    files.push({ path: DATABASE_FILE, sha256: await sha256OfFile(database) });
    await writeNew(join(unfinished, MANIFEST), manifestText(files));
    await syncFolders(
      [
        ...files.map(({ path }) => dirname(join(unfinished, path))),
        join(unfinished, 'photos'),
        unfinished,
      ].filter(existsSync),
    );
    await rename(unfinished, join(folder, name));
    await syncFolders([folder]);
    await thinOut(folder, keepCount);
    return { ok: true, backup: about };
  } catch (fault) {
    await rm(unfinished, { recursive: true, force: true }).catch(() => {});
    return { ok: false, words: diskWords(fault, folder) };
  }
}

function readCopy(path: string): { photos: PhotoRow[]; plantCount: number; storeNumber: number } {
  const db = openToRead(path);
  try {
    return { photos: allPhotos(db), plantCount: allPlants(db).length, storeNumber: storedNumber(db) };
  } finally {
    db.close();
  }
}

async function isAsLong(path: string, { byteCount }: PhotoRow): Promise<boolean> {
  return stat(path).then(
    ({ size }) => size === byteCount,
    () => false,
  );
}

/** Copies an original whose bytes are those it is named by; `false` when they are not, or it is gone. */
async function copyWhole(from: string, to: string, { sha256 }: PhotoRow): Promise<boolean> {
  const bytes = await readFile(from).catch((fault: NodeJS.ErrnoException) => {
    if (fault.code === 'ENOENT') return null;
    throw fault;
  });
  if (bytes === null || createHash('sha256').update(bytes).digest('hex') !== sha256) return false;
  await writeNew(to, bytes);
  return true;
}
