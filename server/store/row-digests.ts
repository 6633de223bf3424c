import { createHash } from 'node:crypto';
import { z } from 'zod';
import { allRows, type Database } from './database.ts';

/** The table that holds the digests; it has none of its own. */
const DIGESTS = 'row_digests';
/** 16 of the 32 bytes of SHA-256: by chance two rows agree once in 10³⁸. */
const DIGEST_BYTES = 16;
/** A row that was damaged when its digest was last made keeps this one, which fits nothing. */
const DAMAGED = Buffer.alloc(0);

type Value = string | number | bigint | null | Buffer;

/** A row that is not as it was written. */
export interface DamagedRow {
  readonly table: string;
  readonly rowId: number;
  readonly wrong: 'changed' | 'no-digest' | 'lost';
}

/**
 * Has every row that is written from now on over this connection digested in the same transaction.
 *
 * Notes: the triggers belong to the connection, so the stored schema is bare and a migration cannot leave one behind
 * that knows the columns of before. A row is named by its rowid: the store is never vacuumed.
 */
export function digestWrittenRows(db: Database): void {
  // Else a row that gives way to another is deleted without its trigger.
  db.pragma('recursive_triggers = ON');
  offerRowDigest(db);
  for (const { table, columns } of digestedTables(db)) {
    const note = `INSERT OR REPLACE INTO ${DIGESTS} (table_name, row_id, digest)
      VALUES ('${table}', new.rowid, row_digest(${rowValues(columns, 'new.')}));`;
    const forget = `DELETE FROM ${DIGESTS} WHERE table_name = '${table}' AND row_id = old.rowid;`;
    for (const [event, body] of [
      ['INSERT', note],
      ['UPDATE', forget + note],
      ['DELETE', forget],
    ]) {
      db.exec(
        `CREATE TEMP TRIGGER "digest_${table}_${event}" AFTER ${event} ON main."${table}" BEGIN ${body} END`,
      );
    }
  }
}

/** Digests every row as it is now, but for `damaged` ones, which stay known as such. */
export function digestEveryRow(db: Database, damaged: readonly DamagedRow[]): void {
  offerRowDigest(db);
  db.exec(`DELETE FROM ${DIGESTS}`);
  for (const { table, columns } of digestedTables(db)) {
    db.exec(
      `INSERT INTO ${DIGESTS} SELECT '${table}', rowid, row_digest(${rowValues(columns)}) FROM "${table}"`,
    );
  }
  const mark = db.prepare(`INSERT OR REPLACE INTO ${DIGESTS} VALUES (?, ?, ?)`);
  for (const { table, rowId } of damaged) mark.run(table, rowId, DAMAGED);
}

/** Whether the store is of a version that has digests. */
export function hasRowDigests(db: Database): boolean {
  return columnsOf(db, DIGESTS).length > 0;
}

/** How many rows are digested, and those that are not as they were written. Reads every value of the store. */
export function checkRows(db: Database): { readonly rowCount: number; readonly damaged: DamagedRow[] } {
  offerRowDigest(db);
  const damaged: DamagedRow[] = [];
  let rowCount = 0;
  const tables = digestedTables(db);
  for (const { table, columns } of tables) {
    rowCount += (db.prepare(`SELECT count(*) AS n FROM "${table}"`).get() as { n: number }).n;
    const wrong = allRows(
      db,
      wrongRow,
      `SELECT rowid AS rowId, digest IS NULL AS isNew FROM "${table}"
       LEFT JOIN ${DIGESTS} ON table_name = '${table}' AND row_id = "${table}".rowid
       WHERE digest IS NOT row_digest(${rowValues(columns)})`,
    );
    for (const { rowId, isNew } of wrong)
      damaged.push({ table, rowId, wrong: isNew ? 'no-digest' : 'changed' });
    const lost = allRows(
      db,
      lostRow,
      `SELECT row_id AS rowId FROM ${DIGESTS} WHERE table_name = '${table}' AND row_id NOT IN (SELECT rowid FROM "${table}")`,
    );
    for (const { rowId } of lost) damaged.push({ table, rowId, wrong: 'lost' });
  }
  const known = tables.map(({ table }) => `'${table}'`).join(', ');
  const strange = allRows(
    db,
    strangeRow,
    `SELECT table_name AS "table", row_id AS rowId FROM ${DIGESTS} WHERE table_name NOT IN (${known})`,
  );
  for (const { table, rowId } of strange) damaged.push({ table, rowId, wrong: 'lost' });
  return { rowCount, damaged };
}

const lostRow = z.object({ rowId: z.int() });
const strangeRow = z.object({ table: z.string(), rowId: z.int() });
const wrongRow = z.object({ rowId: z.int(), isNew: z.int().transform((value) => value === 1) });
const tableRow = z.object({ name: z.string() });
const columnRow = z.object({ name: z.string(), type: z.string() });
type Column = z.infer<typeof columnRow>;

function digestedTables(db: Database): { table: string; columns: Column[] }[] {
  return allRows(
    db,
    tableRow,
    `SELECT name FROM main.sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite\\_%' ESCAPE '\\' AND name <> ?`,
    DIGESTS,
  ).map(({ name }) => ({ table: name, columns: columnsOf(db, name) }));
}

function columnsOf(db: Database, table: string): Column[] {
  return allRows(db, columnRow, 'SELECT name, type FROM pragma_table_info(?) ORDER BY cid', table);
}

/** Text goes in as its bytes: decoded, one broken letter would look like another. */
function rowValues(columns: readonly Column[], row = ''): string {
  return columns
    .map(({ name, type }) => (type === 'TEXT' ? `CAST(${row}"${name}" AS BLOB)` : `${row}"${name}"`))
    .join(', ');
}

function offerRowDigest(db: Database): void {
  db.function('row_digest', { varargs: true, deterministic: true }, (...values: Value[]) => {
    const hash = createHash('sha256');
    for (const value of values) {
      const bytes = bytesOf(value);
      // The length before each value keeps neighbours apart: 'ab', 'c' is not 'a', 'bc'.
      hash.update(bytes === null ? 'null;' : `${typeof value} ${bytes.length};`);
      if (bytes !== null) hash.update(bytes);
    }
    return hash.digest().subarray(0, DIGEST_BYTES);
  });
}

function bytesOf(value: Value): Buffer | null {
  if (value === null || Buffer.isBuffer(value)) return value;
  if (typeof value !== 'number') return Buffer.from(String(value));
  const bytes = Buffer.alloc(8);
  bytes.writeDoubleBE(value);
  return bytes;
}
