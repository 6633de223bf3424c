import { readdir, rename, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Backup } from '../schemas/keeping.ts';
import { readAbout } from './manifest.ts';

const NAME = /^\d{4}-\d{2}-\d{2}-\d{6}(-\d+)?$/;

/** An unfinished backup that old is not being made any more, by the app or the command line. */
const ABANDONED_MS = 24 * 3_600_000;

/** The moment as a folder's name, in UTC, so that names sort as they came: `2026-11-26-093000`. */
export function nameOfMoment(moment: Date): string {
  return moment.toISOString().slice(0, 19).replace('T', '-').replaceAll(':', '');
}

/** The backups in a folder, the newest first; a folder that is not there holds none. */
export async function backupsIn(folder: string): Promise<Backup[]> {
  const backups: Backup[] = [];
  for (const name of (await namesIn(folder))
    .filter((one) => NAME.test(one))
    .sort()
    .reverse()) {
    // One that cannot be read is no backup to rely on; checking it by name says why.
    const about = await readAbout(join(folder, name)).catch(() => null);
    if (about !== null) backups.push({ ...about, name });
  }
  return backups;
}

/** Deletes all but the newest `keepCount` backups, and what unfinished ones left. */
export async function thinOut(folder: string, keepCount: number): Promise<void> {
  const old = (await backupsIn(folder)).slice(keepCount).map(({ name }) => name);
  for (const name of old) {
    // Under its new name it is no backup any more, should the deleting be cut short.
    await rename(join(folder, name), join(folder, `${name}.part`));
  }
  const unfinished = (await namesIn(folder)).filter(
    (name) => name.endsWith('.part') && NAME.test(name.slice(0, -'.part'.length)),
  );
  for (const name of unfinished) {
    const path = join(folder, name);
    const isAbandoned = Date.now() - (await stat(path)).mtimeMs > ABANDONED_MS;
    if (isAbandoned || old.includes(name.slice(0, -'.part'.length))) {
      await rm(path, { recursive: true, force: true });
    }
  }
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder);
  } catch (fault) {
    if ((fault as NodeJS.ErrnoException).code === 'ENOENT') return [];
    throw fault;
  }
}
