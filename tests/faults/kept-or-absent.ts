import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';

/** What a look at a store from outside tells, with code of its own. */
export interface StoreState {
  /** SHA-256 of the photos that are shown: with a row, a view and the right file. */
  readonly whole: ReadonlySet<string>;
  readonly rowsWithoutFile: number;
  readonly filesWithoutRow: number;
  readonly wrongHashes: number;
  readonly emptyFiles: number;
  readonly integrity: string;
}

/** Looks at a store through the file system and SQL alone. */
export function lookAtStore(homePath: string): StoreState {
  const db = new BetterSqlite3(join(homePath, 'rondure.sqlite'), { readonly: true });
  const rows = db.prepare('SELECT sha256, byte_count FROM photos').all() as { sha256: string }[];
  const shown = new Set(
    db.prepare('SELECT photo FROM views WHERE removed_at IS NULL').pluck().all() as string[],
  );
  const integrity = String(db.pragma('integrity_check', { simple: true }));
  db.close();
  const files = new Map<string, string>();
  let [wrongHashes, emptyFiles] = [0, 0];
  const photos = join(homePath, 'photos');
  for (const name of readdirSync(photos, { recursive: true, encoding: 'utf8' })) {
    const sha256 = /([0-9a-f]{64})\.\w+$/.exec(name)?.[1];
    if (!sha256) continue;
    const bytes = readFileSync(join(photos, name));
    if (bytes.length === 0) emptyFiles += 1;
    const isRight = createHash('sha256').update(bytes).digest('hex') === sha256;
    if (isRight) files.set(sha256, name);
    else wrongHashes += 1;
  }
  const known = new Set(rows.map(({ sha256 }) => sha256));
  const pictures = join(homePath, 'pictures');
  for (const folder of [pictures, join(homePath, 'incoming')].filter(existsSync)) {
    for (const entry of readdirSync(folder, { recursive: true, withFileTypes: true })) {
      if (entry.isFile() && readFileSync(join(entry.parentPath, entry.name)).length === 0) emptyFiles += 1;
    }
  }
  return {
    whole: new Set([...shown].filter((sha256) => known.has(sha256) && files.has(sha256))),
    rowsWithoutFile: [...known].filter((sha256) => !files.has(sha256)).length,
    filesWithoutRow: [...files.keys()].filter((sha256) => !known.has(sha256)).length,
    wrongHashes,
    emptyFiles,
    integrity,
  };
}
