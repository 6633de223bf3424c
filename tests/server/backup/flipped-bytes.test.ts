import { copyFileSync, cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { checkBackup, checkStore } from '../../../server/backup/check.ts';
import { copyDatabase } from '../../../server/store/copy-database.ts';
import { homeFolders } from '../../../server/store/data-home.ts';
import { temporaryFolder } from '../fixtures/open-bench.ts';
import { filledBench, imprint } from './filled-bench.ts';

/** Places that are tried in each file; RONDURE_FLIPS asks for more. */
const FLIPS = Number(process.env.RONDURE_FLIPS ?? 60);

/** Numbers from 0 up to 1, the same in each run (mulberry32). */
function seededNumbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/** Turns one bit of a file over while `use` runs. */
async function withFlip<T>(path: string, at: number, bit: number, use: () => Promise<T>): Promise<T> {
  const whole = readFileSync(path);
  const flipped = Buffer.from(whole);
  flipped[at] = (flipped[at] ?? 0) ^ (1 << bit);
  writeFileSync(path, flipped);
  try {
    return await use();
  } finally {
    writeFileSync(path, whole);
  }
}

/** Everything that can be read out of a database file, `null` when it cannot be read. */
function contents(path: string): string | null {
  try {
    const db = new BetterSqlite3(path, { readonly: true });
    try {
      const tables = db.prepare(`SELECT name FROM sqlite_schema WHERE type = 'table'`).pluck().all();
      return JSON.stringify(tables.map((table) => db.prepare(`SELECT * FROM "${table}"`).raw().all()));
    } finally {
      db.close();
    }
  } catch {
    return null;
  }
}

/** A store at rest: the database in one file, as after a stop. */
async function storeAtRest(): Promise<string> {
  const bench = await filledBench();
  const homePath = temporaryFolder();
  cpSync(join(bench.homePath, 'photos'), join(homePath, 'photos'), { recursive: true });
  await copyDatabase(join(bench.homePath, 'rondure.sqlite'), join(homePath, 'rondure.sqlite'));
  return homePath;
}

describe('one flipped bit', () => {
  it('in any photo of the store is found', async () => {
    const homePath = await storeAtRest();
    const home = homeFolders(homePath);
    expect((await checkStore(home)).faults).toEqual([]);
    const names = Object.keys(imprint(home.photos));
    const next = seededNumbers(1);
    for (let k = 0; k < FLIPS; k += 1) {
      const name = names[Math.floor(next() * names.length)] ?? '';
      const path = join(home.photos, name);
      const at = Math.floor(next() * readFileSync(path).length);
      const { faults } = await withFlip(path, at, k % 8, () => checkStore(home));
      expect(faults, `byte ${at} of ${name}`).toEqual([`The photo photos/${name} is not as it was kept.`]);
    }
    console.log(`flipped bits in photos: ${FLIPS} of ${FLIPS} found`);
  });

  it('in any row of the database is found; integrity_check alone does not see them all', async () => {
    const homePath = await storeAtRest();
    const home = homeFolders(homePath);
    const path = join(homePath, 'rondure.sqlite');
    const whole = contents(path);
    const size = readFileSync(path).length;
    const next = seededNumbers(2);
    const told = { read: 0, found: 0, byIntegrityCheck: 0 };
    for (let k = 0; told.read < FLIPS && k < 100 * FLIPS; k += 1) {
      const at = Math.floor(next() * size);
      await withFlip(path, at, Math.floor(next() * 8), async () => {
        // Much of a database file is room that nothing can be read from.
        if (contents(path) === whole) return;
        told.read += 1;
        if (!isSoundByItself(path)) told.byIntegrityCheck += 1;
        if ((await checkStore(home)).faults.length > 0) told.found += 1;
      });
    }
    console.log(
      `flipped bits that change what a database gives back: ${told.found} of ${told.read} found, ${told.byIntegrityCheck} by integrity_check alone`,
    );
    expect(told.found).toBe(told.read);
    expect(told.read).toBe(FLIPS);
    expect(told.byIntegrityCheck).toBeLessThan(told.read);
  });

  it('in every column of every row is found', async () => {
    const homePath = await storeAtRest();
    const home = homeFolders(homePath);
    const path = join(homePath, 'rondure.sqlite');
    const spare = join(temporaryFolder(), 'spare.sqlite');
    copyFileSync(path, spare);
    let changed = 0;
    const look = new BetterSqlite3(spare, { readonly: true });
    const tables = look
      .prepare(`SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> 'row_digests'`)
      .pluck()
      .all() as string[];
    for (const table of tables) {
      const columns = look.prepare('SELECT name, pk FROM pragma_table_info(?)').all(table) as {
        name: string;
        pk: number;
      }[];
      const rowId = look.prepare(`SELECT min(rowid) FROM "${table}"`).pluck().get();
      if (rowId === null) continue;
      for (const { name } of columns.filter(({ pk }) => pk === 0)) {
        const db = new BetterSqlite3(path);
        db.pragma('foreign_keys = OFF');
        db.pragma('ignore_check_constraints = ON');
        const type = db
          .prepare(`SELECT typeof("${name}") FROM "${table}" WHERE rowid = ?`)
          .pluck()
          .get(rowId);
        const harmed = HARM[String(type)]?.replaceAll('value', `"${name}"`);
        if (harmed) db.prepare(`UPDATE "${table}" SET "${name}" = ${harmed} WHERE rowid = ?`).run(rowId);
        db.close();
        if (harmed) {
          changed += 1;
          expect((await checkStore(home)).faults, `${table}.${name}`).toContain(
            `A record of “${table}” (number ${rowId}) is not as it was written.`,
          );
        }
        copyFileSync(spare, path);
      }
    }
    look.close();
    console.log(`changed values behind the store's back: ${changed} of ${changed} found`);
    expect(changed).toBeGreaterThan(60);
  });

  it('in any file of a backup is found', async () => {
    const bench = await filledBench();
    await bench.send('POST', '/api/keeping/backups');
    await bench.services.keeping.whenIdle();
    const { backups } = (await bench.send('GET', '/api/keeping')).body;
    const folder = join(bench.homePath, 'backups');
    const { name } = backups[0];
    expect((await checkBackup(folder, name)).faults).toEqual([]);
    const files = Object.keys(imprint(join(folder, name)));
    const next = seededNumbers(3);
    let flips = 0;
    for (const file of files) {
      const path = join(folder, name, file);
      const size = readFileSync(path).length;
      for (let k = 0; k < Math.ceil(FLIPS / 5); k += 1) {
        const at = Math.floor(next() * size);
        const { faults } = await withFlip(path, at, k % 8, () => checkBackup(folder, name));
        expect(faults.length, `byte ${at} of ${file}`).toBeGreaterThan(0);
        flips += 1;
      }
    }
    console.log(`flipped bits in a backup's files: ${flips} of ${flips} found`);
  });
});

/** What a slip of one bit may make of a value of each type. */
const HARM: Record<string, string> = {
  text: `CASE WHEN value = '' THEN 'a' ELSE char(unicode(value) + 1) || substr(value, 2) END`,
  integer: 'value + 1',
  real: 'value * 1.0000000000000002',
  blob: `CAST(x'00' || value AS BLOB)`,
};

function isSoundByItself(path: string): boolean {
  try {
    const db = new BetterSqlite3(path, { readonly: true });
    try {
      return db.pragma('integrity_check', { simple: true }) === 'ok';
    } finally {
      db.close();
    }
  } catch {
    return false;
  }
}
