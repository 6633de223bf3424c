import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type BetterSqlite3 from 'better-sqlite3';
import { checkRows, digestEveryRow, hasRowDigests } from './row-digests.ts';

const MIGRATIONS = join(import.meta.dirname, 'migrations');

/** The store was written by a newer Rondure than this one. */
export class StoreTooNew extends Error {}

export interface Migration {
  readonly name: string;
  readonly number: number;
}

/** Every migration there is, in order. */
export function allMigrations(): Migration[] {
  return readdirSync(MIGRATIONS)
    .filter((name) => /^\d{3}-.+\.sql$/.test(name))
    .sort()
    .map((name) => ({ name, number: Number(name.slice(0, 3)) }));
}

/** The number of the newest migration: that of a store which is up to date. */
export function newestNumber(): number {
  return allMigrations().at(-1)?.number ?? 0;
}

/** The number that a store was brought to; 0 for one that was just made. */
export function storedNumber(db: BetterSqlite3.Database): number {
  return Number(db.pragma('user_version', { simple: true }));
}

/**
 * Brings the database up to date: runs every `migrations/NNN-name.sql` above the stored number, each with its
 * number in one transaction, so that a stop half-way leaves the version before. `beforehand` is called with the
 * stored number when there is something to run on a store in use.
 */
export function migrate(
  db: BetterSqlite3.Database,
  { to = newestNumber(), beforehand = () => {} }: { to?: number; beforehand?: (stored: number) => void } = {},
): void {
  const stored = storedNumber(db);
  if (stored > to) {
    throw new StoreTooNew(
      `The store was written by a newer version (its number is ${stored}, this version knows ${to}). Start that version, or another data home.`,
    );
  }
  if (stored === to) return;
  if (stored > 0) beforehand(stored);
  const damaged = hasRowDigests(db) ? checkRows(db).damaged : [];
  for (const { name, number } of allMigrations().filter((one) => one.number > stored && one.number <= to)) {
    db.transaction(() => {
      db.exec(readFileSync(join(MIGRATIONS, name), 'utf8'));
      if (hasRowDigests(db)) digestEveryRow(db, damaged);
      db.pragma(`user_version = ${number}`);
    })();
  }
}
