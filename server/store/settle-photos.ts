import { mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import type { DataHome } from './data-home.ts';
import type { Database } from './database.ts';
import { originalPath } from './photo-files.ts';
import { allPhotos } from './photos.ts';

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
  for (const left of readdirSync(home.incoming)) rmSync(join(home.incoming, left), { force: true });
  const known = new Map(
    allPhotos(db).map(({ sha256, format }) => [originalPath(home, sha256, format), sha256] as const),
  );
  const there = new Set(
    folders(home.photos).flatMap((folder) => readdirSync(folder).map((name) => join(folder, name))),
  );
  const keptNames = new Set(
    [...known.keys()].filter((path) => there.has(path)).map((path) => basename(path)),
  );
  for (const path of there) {
    if (known.has(path)) continue;
    mkdirSync(home.setAside, { recursive: true });
    renameSync(path, join(home.setAside, basename(path)));
  }
  const setAside = setAsideNames(home).filter((name) => {
    if (!keptNames.has(name)) return true;
    rmSync(join(home.setAside, name));
    return false;
  });
  return { setAside, missing: [...known].filter(([path]) => !there.has(path)).map(([, sha256]) => sha256) };
}

function folders(root: string): string[] {
  return readdirSync(root, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => join(root, entry.name));
}

function setAsideNames(home: DataHome): string[] {
  try {
    return readdirSync(home.setAside).sort();
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw fault;
  }
}
