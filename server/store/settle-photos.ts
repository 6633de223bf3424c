import { existsSync, mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { DataHome } from './data-home.ts';
import type { Database } from './database.ts';
import { originalPath } from './photo-files.ts';
import { photoBySha256, photosOfFolder } from './photos.ts';

/** What the start found of photos that a stop or a fault left half kept. */
export interface FoundAtStart {
  /** File names in the folder `set-aside`: originals that the store knows nothing of. */
  readonly setAside: readonly string[];
  /** SHA-256 of photos that the store knows and whose original is not there. */
  readonly missing: readonly string[];
}

/**
 * Sweeps unfinished uploads, sets originals without a row aside and names rows without an original. Call it before uploads
 * are taken, by the one program that holds the home.
 *
 * Notes: such an original was never answered as kept, so whoever sent it still has it; it goes to `set-aside` all the
 * same, since a photo is never deleted. One that has come in since leaves it.
 */
export function settlePhotos(db: Database, home: DataHome): FoundAtStart {
  const steps = settling(db, home, Number.POSITIVE_INFINITY);
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}

/**
 * The same folder by folder, beside what the server answers: a store of many years has photos by the hundred thousand. Only the
 * sweep of unfinished uploads is done when it returns.
 *
 * @param isClosing once true, what is left is left for the next start
 */
export function settlePhotosByAndBy(
  db: Database,
  home: DataHome,
  isClosing: () => boolean,
): Promise<FoundAtStart> {
  const steps = settling(db, home, Date.now());
  steps.next();
  return new Promise((resolve, reject) => {
    const step = () => {
      try {
        if (isClosing()) return resolve({ setAside: [], missing: [] });
        const { done, value } = steps.next();
        if (done) resolve(value);
        else setTimeout(step, BETWEEN_FOLDERS_MS);
      } catch (fault) {
        reject(fault);
      }
    };
    setTimeout(step, AFTER_START_MS);
  });
}

/** The first pages go before. */
const AFTER_START_MS = 500;
const BETWEEN_FOLDERS_MS = 2;
/** Clocks of disks are coarse. */
const CLOCK_MS = 2_000;

/** Stops after the sweep and after each folder. Files put in place since `startedMs` may be about to get their row. */
function* settling(db: Database, home: DataHome, startedMs: number): Generator<void, FoundAtStart> {
  for (const left of readdirSync(home.incoming)) rmSync(join(home.incoming, left), { force: true });
  yield;
  const missing: string[] = [];
  const prefixes = Array.from({ length: 256 }, (_, k) => k.toString(16).padStart(2, '0'));
  for (const folder of new Set([...prefixes, ...folderNames(home.photos)])) {
    // Rows first: an original is put in place before its row is written.
    const rows = photosOfFolder(db, folder);
    const there = new Set(namesIn(join(home.photos, folder)));
    const known = new Map(
      rows.map(({ sha256, format }) => [basename(originalPath(home, sha256, format)), sha256]),
    );
    for (const name of there) {
      const path = join(home.photos, folder, name);
      if (known.has(name) || statSync(path).ctimeMs > startedMs - CLOCK_MS) continue;
      mkdirSync(home.setAside, { recursive: true });
      renameSync(path, join(home.setAside, name));
    }
    for (const [name, sha256] of known) if (!there.has(name)) missing.push(sha256);
    yield;
  }
  const setAside = namesIn(home.setAside)
    .sort()
    .filter((name) => {
      const photo = photoBySha256(db, name.slice(0, SHA256_LENGTH));
      const isBack =
        photo !== null &&
        basename(originalPath(home, photo.sha256, photo.format)) === name &&
        existsSync(originalPath(home, photo.sha256, photo.format));
      if (isBack) rmSync(join(home.setAside, name));
      return !isBack;
    });
  return { setAside, missing };
}

const SHA256_LENGTH = 64;

function folderNames(root: string): string[] {
  return readdirSync(root, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name);
}

function namesIn(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw fault;
  }
}
