import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { jsonText } from './columns.ts';
import { type Database, oneRow, run } from './database.ts';

/**
 * Keeps the answer of a function that takes long, over a restart too.
 *
 * @param name of the function
 * @param question all that the answer hangs on, plain data
 * @param reckon pure, out of `core`; its answer is plain data
 */
export type KeepFit = <Answer>(name: string, question: object, reckon: () => Answer) => Answer;

const CORE = join(import.meta.dirname, '../../core');
/** Answers that nobody asked for since so long make room when a new one is kept. */
const KEPT_DAYS = 400;
const AT_ONCE = 100;

const row = z.object({ answer: jsonText });
const known = new WeakMap<Database, KeepFit>();

/** The answers that a database keeps. */
export function keptFits(db: Database): KeepFit {
  const keeping = known.get(db) ?? keepIn(db);
  known.set(db, keeping);
  return keeping;
}

function keepIn(db: Database): KeepFit {
  const unwritten = new Map<string, string>();
  // Many come at once, on the first look at a bench: they are written together, and nobody waits for the disk.
  const write = () => {
    if (!db.open) return;
    try {
      db.transaction(() => {
        run(db, `DELETE FROM kept_fits WHERE kept_on < date('now', ?)`, `-${KEPT_DAYS} days`);
        for (const [question, answer] of unwritten) {
          run(db, `INSERT OR REPLACE INTO kept_fits VALUES (?, ?, date('now'))`, question, answer);
        }
      })();
    } catch {
      // A full disk, say: it is reckoned again when it is asked for again, and nothing of the grower's is lost.
    }
    unwritten.clear();
  };
  return <Answer>(name: string, question: object, reckon: () => Answer): Answer => {
    const key = createHash('sha256')
      .update(`${codeOfCore()} ${name} ${JSON.stringify(question)}`)
      .digest('hex');
    const kept = oneRow(db, row, 'SELECT answer FROM kept_fits WHERE question = ?', key);
    if (kept !== null) return kept.answer as Answer;
    const answer = reckon();
    if (unwritten.size === 0) setTimeout(write, 0);
    unwritten.set(key, JSON.stringify(answer));
    // So that a stop on the way through a large bench loses few.
    if (unwritten.size >= AT_ONCE && !db.inTransaction) write();
    return answer;
  };
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
