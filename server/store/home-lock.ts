import { join } from 'node:path';
import BetterSqlite3 from 'better-sqlite3';

/** Another program works on this data home; the message says what to do. */
export class HomeInUse extends Error {}

/** Holds a data home for one program; the system lets go of it when the program ends, however it ends. */
export interface HomeLock {
  release(): void;
}

/** Takes a data home for this program alone. Throws `HomeInUse` while another has it. */
export function lockHome(root: string): HomeLock {
  // A lock of the database library is the one that every system frees by itself; its journal stays in memory.
  const lock = new BetterSqlite3(join(root, 'in-use.lock'), { timeout: 0 });
  try {
    lock.pragma('journal_mode = MEMORY');
    lock.exec('BEGIN EXCLUSIVE');
  } catch (fault) {
    lock.close();
    if ((fault as { code?: string }).code !== 'SQLITE_BUSY') throw fault;
    throw new HomeInUse(
      `A Rondure that is still running uses the data folder ${root}. Stop that one first, or set RONDURE_HOME to another folder.`,
    );
  }
  return { release: () => void lock.close() };
}
