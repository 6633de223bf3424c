import {
  closeSync,
  copyFileSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { join } from 'node:path';
import { DATABASE_FILE, type Database } from './database.ts';

/** Folder of the data home with the databases as they were before each upgrade. */
export const BEFORE_UPGRADE = 'before-upgrade';
/** Older copies make room. */
const COPIES_KEPT = 3;

/** The database could not be copied before its upgrade, which was therefore not begun; the message says what to do. */
export class UpgradeNotCopied extends Error {}

/** Copies the database file as it is before migrations from the number `stored`: `before-upgrade/2026-11-26-093000-from-007.sqlite`. */
export function copyBeforeUpgrade(db: Database, home: string, stored: number): void {
  const folder = join(home, BEFORE_UPGRADE);
  const when = new Date().toISOString().slice(0, 19).replace('T', '-').replaceAll(':', '');
  const name = `${when}-from-${String(stored).padStart(3, '0')}.sqlite`;
  const unfinished = join(folder, `${name}.part`);
  try {
    // Everything into the one file: until the migrations begin nobody writes to it.
    const [checkpoint] = db.pragma('wal_checkpoint(TRUNCATE)') as { busy: number }[];
    if (checkpoint?.busy !== 0) throw new Error('another program is using the store');
    mkdirSync(folder, { recursive: true });
    copyFileSync(join(home, DATABASE_FILE), unfinished);
    syncToDisk(unfinished);
    renameSync(unfinished, join(folder, name));
    syncToDisk(folder);
  } catch (fault) {
    rmSync(unfinished, { force: true });
    const why = (fault as NodeJS.ErrnoException).code ?? (fault as Error).message;
    throw new UpgradeNotCopied(
      `The store is of an older version and was to be copied to ${folder} before its upgrade, which failed (${why}). Nothing was changed. Make room there, see that this user may write there, and start again.`,
    );
  }
  const copies = readdirSync(folder)
    .filter((one) => one.endsWith('.sqlite'))
    .sort();
  for (const old of copies.slice(0, -COPIES_KEPT)) rmSync(join(folder, old), { force: true });
}

function syncToDisk(path: string): void {
  // A folder cannot be opened there.
  if (process.platform === 'win32' && !path.endsWith('.part')) return;
  const file = openSync(path, path.endsWith('.part') ? 'r+' : 'r');
  try {
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
