import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import { readdir, readFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { type Backup, backupSchema } from '../schemas/keeping.ts';
import { DATABASE_FILE } from '../store/database.ts';

/** The list of a backup's files, in the form that `sha256sum -c` reads too. */
export const MANIFEST = 'SHA256SUMS';
/** What the backup is, for people and for the list of backups. */
export const ABOUT = 'about.json';

/** A file of a backup; `path` is relative, with slashes. */
export interface ListedFile {
  readonly path: string;
  readonly sha256: string;
}

/** A backup that cannot be read; the message says what is wrong. */
export class BackupUnreadable extends Error {}

export function manifestText(files: readonly ListedFile[]): string {
  const sorted = [...files].sort((a, b) => (a.path < b.path ? -1 : 1));
  return sorted.map(({ path, sha256 }) => `${sha256}  ${path}\n`).join('');
}

/** Reads a backup's list; every byte of it counts. Throws `BackupUnreadable`. */
export async function readManifest(folder: string): Promise<ListedFile[]> {
  const text = await readFile(join(folder, MANIFEST), 'latin1').catch((fault: NodeJS.ErrnoException) => {
    throw new BackupUnreadable(
      `There is no backup in ${folder}: its ${MANIFEST} cannot be read (${fault.code}).`,
    );
  });
  const lines = text.split('\n');
  if (lines.pop() !== '') throw new BackupUnreadable(`The list ${MANIFEST} of the backup breaks off.`);
  const files = lines.map((line) => {
    const parts = /^([0-9a-f]{64}) {2}(photos\/[0-9a-f]{2}\/[0-9a-f]{64}\.[a-z]{3,4}|[a-z]+\.[a-z]+)$/.exec(
      line,
    );
    if (!parts?.[1] || !parts[2])
      throw new BackupUnreadable(`The list ${MANIFEST} of the backup is damaged.`);
    return { sha256: parts[1], path: parts[2] };
  });
  for (const needed of [ABOUT, DATABASE_FILE]) {
    if (!files.some(({ path }) => path === needed)) {
      throw new BackupUnreadable(`The list ${MANIFEST} of the backup lacks ${needed}.`);
    }
  }
  return files;
}

/** Reads what a backup tells of itself. Throws `BackupUnreadable`. */
export async function readAbout(folder: string): Promise<Backup> {
  try {
    return backupSchema.parse(JSON.parse(await readFile(join(folder, ABOUT), 'utf8')));
  } catch {
    throw new BackupUnreadable(`There is no backup in ${folder}: its ${ABOUT} cannot be read.`);
  }
}

/** SHA-256 of a file, in hex. */
export async function sha256OfFile(path: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const chunk of createReadStream(path, { highWaterMark: 1 << 20 })) hash.update(chunk as Buffer);
  return hash.digest('hex');
}

/** Every file below a folder, relative with slashes. */
export async function filesBelow(folder: string): Promise<string[]> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  return entries
    .filter((entry) => !entry.isDirectory())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .split(sep)
        .join('/'),
    );
}
