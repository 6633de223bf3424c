import BetterSqlite3 from 'better-sqlite3';
import { openToRead } from './database.ts';
import { checkRows, hasRowDigests } from './row-digests.ts';

/** All pages in one step: the copy is of one moment, whatever is written meanwhile. */
const EVERY_PAGE = 0x7fffffff;

/** Copies a database, in use or not, to a new file that needs no other beside it. */
export async function copyDatabase(from: string, to: string): Promise<void> {
  const source = openToRead(from);
  try {
    await source.backup(to, { progress: () => EVERY_PAGE });
  } finally {
    source.close();
  }
  const copy = new BetterSqlite3(to);
  copy.pragma('journal_mode = DELETE');
  copy.close();
}

/** What is wrong with a database, in sentences; none when it is as it was written. Reads all of it. */
export function checkDatabase(path: string): { readonly rowCount: number; readonly faults: string[] } {
  try {
    const db = openToRead(path);
    try {
      const faults = [...structureFaults(db)];
      if (!hasRowDigests(db)) return { rowCount: 0, faults };
      const { rowCount, damaged } = checkRows(db);
      for (const { table, rowId, wrong } of damaged) {
        faults.push(
          wrong === 'lost'
            ? `A record of “${table}” (number ${rowId}) is gone that was never deleted.`
            : `A record of “${table}” (number ${rowId}) is not as it was written.`,
        );
      }
      return { rowCount, faults };
    } finally {
      db.close();
    }
  } catch (fault) {
    return { rowCount: 0, faults: [`The database cannot be read to its end (${(fault as Error).message}).`] };
  }
}

function structureFaults(db: BetterSqlite3.Database): string[] {
  const found = db.pragma('integrity_check') as { integrity_check: string }[];
  const broken = found.filter(({ integrity_check }) => integrity_check !== 'ok');
  const loose = db.pragma('foreign_key_check') as { table: string }[];
  return [
    ...broken.map(({ integrity_check }) => `The database is damaged: ${integrity_check}.`),
    ...loose.map(({ table }) => `A record of “${table}” belongs to one that is not there.`),
  ];
}
