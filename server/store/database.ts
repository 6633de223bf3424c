import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';
import type { z } from 'zod';
import { copyBeforeUpgrade } from './before-upgrade.ts';
import { migrate } from './migrate.ts';
import { digestWrittenRows } from './row-digests.ts';

/** The one door to the database. Rows leave it only after a zod schema has read them. */
export type Database = BetterSqlite3.Database;

type Value = string | number | null | Uint8Array;

/** The database's file in a data home. */
export const DATABASE_FILE = 'rondure.sqlite';

/** There is no room to open the store in; the message says what to do. */
export class NoRoomForStore extends Error {}

/** What the database says when a full disk keeps it shut; its index in shared memory is a file too. */
const NO_ROOM = new Set(['SQLITE_FULL', 'SQLITE_IOERR_SHMSIZE']);

/** Opens (and makes, and brings up to date) the database of a data home. One of before is copied first. */
export function openDatabase(home: string): Database {
  const db = new BetterSqlite3(join(home, DATABASE_FILE));
  try {
    db.pragma('journal_mode = WAL');
    // FULL: what was answered as kept is on the disk, also after a power cut.
    db.pragma('synchronous = FULL');
    db.pragma('foreign_keys = ON');
    migrate(db, { beforehand: (stored) => copyBeforeUpgrade(db, home, stored) });
    digestWrittenRows(db);
  } catch (fault) {
    db.close();
    if (!NO_ROOM.has(String((fault as { code?: unknown }).code))) throw fault;
    throw new NoRoomForStore(
      `The disk that ${home} lies on is full, so the store cannot be opened. Nothing is lost: make room there, then start Rondure again.`,
    );
  }
  return db;
}

/** Opens a database to look at, beside whoever writes it. */
export function openToRead(path: string): Database {
  return new BetterSqlite3(path, { readonly: true, fileMustExist: true });
}

const statements = new WeakMap<Database, Map<string, BetterSqlite3.Statement<Value[]>>>();

/** A statement is planned once; a page runs the same ones for every plant. */
function prepared(db: Database, sql: string): BetterSqlite3.Statement<Value[]> {
  const known = statements.get(db) ?? new Map<string, BetterSqlite3.Statement<Value[]>>();
  statements.set(db, known);
  const statement = known.get(sql) ?? db.prepare<Value[]>(sql);
  known.set(sql, statement);
  return statement;
}

/** Every row of a query, each read by `row`. */
export function allRows<Row>(db: Database, row: z.ZodType<Row>, sql: string, ...values: Value[]): Row[] {
  return prepared(db, sql)
    .all(...values)
    .map((found) => row.parse(found));
}

/** The first row of a query, `null` when there is none. */
export function oneRow<Row>(db: Database, row: z.ZodType<Row>, sql: string, ...values: Value[]): Row | null {
  const found = prepared(db, sql).get(...values);
  return found === undefined ? null : row.parse(found);
}

/** Runs a statement; the number of rows it changed. */
export function run(db: Database, sql: string, ...values: Value[]): number {
  return prepared(db, sql).run(...values).changes;
}
