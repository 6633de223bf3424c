import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import type { z } from 'zod';
import { migrate } from './migrate.ts';

/** The one door to the database. Rows leave it only after a zod schema has read them. */
export type Database = BetterSqlite3.Database;

type Value = string | number | null | Uint8Array;

/** Opens (and makes, and brings up to date) the database of a data home. */
export function openDatabase(home: string): Database {
  const db = new BetterSqlite3(join(home, 'rondure.sqlite'));
  db.pragma('journal_mode = WAL');
  // FULL: what was answered as kept is on the disk, also after a power cut.
  db.pragma('synchronous = FULL');
  db.pragma('foreign_keys = ON');
  migrate(db);
  return db;
}

/** Every row of a query, each read by `row`. */
export function allRows<Row>(db: Database, row: z.ZodType<Row>, sql: string, ...values: Value[]): Row[] {
  return db
    .prepare(sql)
    .all(...values)
    .map((found) => row.parse(found));
}

/** The first row of a query, `null` when there is none. */
export function oneRow<Row>(db: Database, row: z.ZodType<Row>, sql: string, ...values: Value[]): Row | null {
  const found = db.prepare(sql).get(...values);
  return found === undefined ? null : row.parse(found);
}

/** Runs a statement; the number of rows it changed. */
export function run(db: Database, sql: string, ...values: Value[]): number {
  return db.prepare(sql).run(...values).changes;
}
