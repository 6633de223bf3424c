import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
} from 'node:fs';
import { mkdir, readdir, realpath, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { z } from 'zod';
import { checkDatabase } from '../store/copy-database.ts';
import { DATABASE_FILE, openToRead } from '../store/database.ts';
import { newestNumber } from '../store/migrate.ts';
import { leadsOutOf } from '../store/photo-files.ts';
import { allPhotos } from '../store/photos.ts';
import { copyNew, diskWords, syncFolders, writeNew } from './disk.ts';
import { BackupUnreadable, readAbout, readManifest, sha256OfFile } from './manifest.ts';
import { nameOfMoment } from './rotation.ts';

/** A whole store that is to take the place of the one in use; it is in this folder only when all of it is on the disk. */
const RESTORED = 'restored';
/** In it: the name of the folder that the store in use goes to. */
const SWAP = 'swap.json';
const swapSchema = z.object({ replaced: z.string() });

export type RestoreOutcome = { readonly ok: true } | { readonly ok: false; readonly words: string };

/** A backup to be laid out in a data home, ready to take its store's place. */
export interface RestoreTask {
  readonly backup: string;
  readonly homeRoot: string;
}

/**
 * Lays a backup out in `restored`, beside the store in use, every file read against the list. Nothing of the store in use
 * is touched; when anything is wrong nothing of the backup stays.
 */
export async function layOutBackup({ backup, homeRoot }: RestoreTask): Promise<RestoreOutcome> {
  const unfinished = join(homeRoot, `${RESTORED}.part`);
  const refused = (words: string): RestoreOutcome => ({
    ok: false,
    words: `${words} The store was left as it is.`,
  });
  try {
    await rm(unfinished, { recursive: true, force: true });
    const { storeNumber } = await readAbout(backup);
    if (storeNumber > newestNumber()) {
      return refused(
        `The backup was made by a newer version (its store’s number is ${storeNumber}, this version knows ${newestNumber()}). Restore it with that version.`,
      );
    }
    const files = await readManifest(backup);
    await mkdir(unfinished, { recursive: true });
    for (const { path, sha256 } of files) {
      const copy = join(unfinished, path);
      await requireInside(backup, path);
      await copyNew(join(backup, path), copy).catch((fault: NodeJS.ErrnoException) => {
        if (fault.code === 'ENOENT') throw new BackupUnreadable(`The backup’s file ${path} is not there.`);
        throw fault;
      });
      if ((await sha256OfFile(copy)) !== sha256) {
        throw new BackupUnreadable(`The backup’s file ${path} is not as it was kept. Choose another backup.`);
      }
    }
    const { faults } = checkDatabase(join(unfinished, DATABASE_FILE));
    const broken = faults.find((fault) => /cannot be read|is damaged/.test(fault));
    if (broken !== undefined) throw new BackupUnreadable(broken);
    requireNamedByDigest(join(unfinished, DATABASE_FILE));
    await mkdir(join(unfinished, 'photos'), { recursive: true });
    const replaced = `replaced-${nameOfMoment(new Date())}`;
    await writeNew(join(unfinished, SWAP), JSON.stringify({ replaced }));
    await syncFolders([
      ...files.map(({ path }) => dirname(join(unfinished, path))),
      join(unfinished, 'photos'),
      unfinished,
    ]);
    await rm(join(homeRoot, RESTORED), { recursive: true, force: true });
    await rename(unfinished, join(homeRoot, RESTORED));
    await syncFolders([homeRoot]);
    return { ok: true };
  } catch (fault) {
    await rm(unfinished, { recursive: true, force: true }).catch(() => {});
    return refused(fault instanceof BackupUnreadable ? fault.message : diskWords(fault, homeRoot));
  }
}

/** A link in a backup could bring in any file of the machine. */
async function requireInside(backup: string, path: string): Promise<void> {
  const real = await realpath(join(backup, path)).catch(() => null);
  // One that is not there is told when it is copied.
  if (real !== null && (await leadsOutOf(backup, real))) {
    throw new BackupUnreadable(`The backup’s file ${path} leads out of the backup. Choose another backup.`);
  }
}

/** A photo is named by its SHA-256 and lies where that says: another name could lead anywhere. */
function requireNamedByDigest(database: string): void {
  const db = openToRead(database);
  try {
    allPhotos(db);
  } catch {
    throw new BackupUnreadable('The backup’s database names photos in a way that no version does.');
  } finally {
    db.close();
  }
}

/**
 * Puts a store that was laid out in the place of the one in a data home, which goes to a folder of its own. Call it while
 * nothing is open there. Each move either was made or can be made again, so a stop half-way is made good by the next call.
 * Whether there was a store to put in place.
 */
export function swapInRestored(homeRoot: string): boolean {
  const restored = join(homeRoot, RESTORED);
  rmSync(`${restored}.part`, { recursive: true, force: true });
  if (!existsSync(restored)) return false;
  if (existsSync(join(restored, SWAP))) {
    const { replaced } = swapSchema.parse(JSON.parse(readFileSync(join(restored, SWAP), 'utf8')));
    const away = join(homeRoot, replaced);
    for (const name of [DATABASE_FILE, 'photos']) {
      // Once the new one is in its place, what lies there is not to be moved away again.
      if (!existsSync(join(restored, name))) continue;
      for (const old of name === DATABASE_FILE ? [`${name}-wal`, `${name}-shm`, name] : [name]) {
        if (!existsSync(join(homeRoot, old)) || wasEmpty(join(homeRoot, old))) continue;
        mkdirSync(away, { recursive: true });
        renameSync(join(homeRoot, old), join(away, old));
      }
      renameSync(join(restored, name), join(homeRoot, name));
    }
  }
  rmSync(restored, { recursive: true, force: true });
  return true;
}

/** Takes an empty folder away: in a new home there is nothing to put aside. */
function wasEmpty(path: string): boolean {
  if (!statSync(path).isDirectory() || readdirSync(path).length > 0) return false;
  rmdirSync(path);
  return true;
}

/** The folders of a data home with stores that gave way to restored ones, the newest first. */
export async function replacedStores(homeRoot: string): Promise<string[]> {
  return (await readdir(homeRoot))
    .filter((name) => /^replaced-\d/.test(name))
    .sort()
    .reverse();
}
