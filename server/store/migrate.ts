import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type BetterSqlite3 from 'better-sqlite3';

const MIGRATIONS = join(import.meta.dirname, 'migrations');

/** The store was written by a newer Rondure than this one. */
export class StoreTooNew extends Error {}

/**
 * Brings the database up to date: runs every `migrations/NNN-name.sql` above the stored number, each with its
 * number in one transaction, so that a stop half-way leaves the version before.
 */
export function migrate(db: BetterSqlite3.Database): void {
  const stored = Number(db.pragma('user_version', { simple: true }));
  const migrations = readdirSync(MIGRATIONS)
    .filter((name) => /^\d{3}-.+\.sql$/.test(name))
    .sort()
    .map((name) => ({ name, number: Number(name.slice(0, 3)) }));
  const newest = migrations.at(-1)?.number ?? 0;
  if (stored > newest) {
    throw new StoreTooNew(
      `The store was written by a newer version (its number is ${stored}, this version knows ${newest}). Start that version, or another data home.`,
    );
  }
  for (const { name, number } of migrations.filter((migration) => migration.number > stored)) {
    db.transaction(() => {
      db.exec(readFileSync(join(MIGRATIONS, name), 'utf8'));
      db.pragma(`user_version = ${number}`);
    })();
  }
}
