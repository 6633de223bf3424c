import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { jsonText } from './columns.ts';
import { type Database, oneRow, run } from './database.ts';

/** Answers of functions that take long, kept over a restart too. */
export interface KeptFits {
  /**
   * @param name of the function, which is pure and out of `core`
   * @param question all that the answer hangs on, plain data
   * @returns the answer, plain data; `undefined` when it is not kept
   */
  kept(name: string, question: object): unknown;
  keep(name: string, question: object, answer: unknown): void;
  /** Writes what is not written yet, before the database is closed. */
  settle(): void;
}

const CORE = join(import.meta.dirname, '../../core');
/** Answers that were kept so long ago make room, once in the program's life. */
const KEPT_DAYS = 400;
const AT_ONCE = 100;
/** A commit waits for the disk, and everybody for it: those that come soon after one another share one. */
const WRITE_AFTER_MS = 2_000;

const row = z.object({ answer: jsonText });
const known = new WeakMap<Database, KeptFits>();

/** The answers that a database keeps. */
export function keptFits(db: Database): KeptFits {
  const keeping = known.get(db) ?? keepIn(db);
  known.set(db, keeping);
  return keeping;
}

function keepIn(db: Database): KeptFits {
  const unwritten = new Map<string, unknown>();
  let isTidy = false;
  const write = () => {
    if (!db.open || unwritten.size === 0) return;
    try {
      db.transaction(() => {
        if (!isTidy) run(db, `DELETE FROM kept_fits WHERE kept_on < date('now', ?)`, `-${KEPT_DAYS} days`);
        isTidy = true;
        for (const [question, answer] of unwritten) {
          run(
            db,
            `INSERT OR REPLACE INTO kept_fits VALUES (?, ?, date('now'))`,
            question,
            JSON.stringify(answer),
          );
        }
      })();
    } catch {
      // A full disk, say: it is reckoned again when it is asked for again, and nothing of the grower's is lost.
    }
    unwritten.clear();
  };
  return {
    kept(name, question) {
      const key = keyOf(name, question);
      if (unwritten.has(key)) return unwritten.get(key);
      return oneRow(db, row, 'SELECT answer FROM kept_fits WHERE question = ?', key)?.answer;
    },
    keep(name, question, answer) {
      if (unwritten.size === 0) setTimeout(write, WRITE_AFTER_MS).unref();
      unwritten.set(keyOf(name, question), answer);
      // So that a stop on the way through a large bench loses few.
      if (unwritten.size >= AT_ONCE && !db.inTransaction) write();
    },
    settle: write,
  };
}

function keyOf(name: string, question: object): string {
  return createHash('sha256')
    .update(`${codeOfCore()} ${name} ${JSON.stringify(question)}`)
    .digest('hex');
}

let code: string | null = null;

/** Another one after anything of `core` was changed, so that no answer outlives the code that gave it. */
function codeOfCore(): string {
  if (code !== null) return code;
  const hash = createHash('sha256');
  const names = (readdirSync(CORE, { recursive: true }) as string[]).filter((name) => name.endsWith('.ts'));
  for (const name of names.sort()) hash.update(name).update(readFileSync(join(CORE, name)));
  code = hash.digest('hex');
  return code;
}
