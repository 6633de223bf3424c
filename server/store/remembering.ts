import { type AskedTable, changesOf } from './changes.ts';
import type { Database } from './database.ts';

interface Kept<Answer> {
  readonly asOf: number;
  readonly asked: readonly unknown[];
  readonly answer: Answer;
}

/** How an answer is kept. */
export interface Remembering {
  /** Plants whose answer is kept, for what is large; the one longest unasked goes first. */
  readonly most?: number;
  /** It hangs on nothing of the plant but its photos and what was measured of them. */
  readonly ofPhotos?: boolean;
  /** An answer that reads as the last one is the last one itself, so that what rests on it need not be reckoned anew. Plain data only. */
  readonly isSteady?: boolean;
}

/**
 * Keeps what was reckoned from the store of each plant until something that tells of it was written.
 *
 * @returns a function that reckons anew only when it must; one answer a plant is kept
 *
 * Notes: `asked` is all that the answer hangs on beside the plant's own rows and its stands, as the day and the shows; objects are
 * compared by identity. Inside a transaction nothing is kept: it may be undone.
 */
export function rememberingPlants<Answer>({
  most = Number.POSITIVE_INFINITY,
  isSteady = false,
  ofPhotos = false,
}: Remembering = {}): (
  db: Database,
  of: { readonly plantId: string; readonly asked: readonly unknown[] },
  reckon: () => Answer,
) => Answer {
  const kept = new WeakMap<Database, Map<string, Kept<Answer>>>();
  return (db, { plantId, asked }, reckon) => {
    if (db.inTransaction) return reckon();
    const answers = kept.get(db) ?? new Map<string, Kept<Answer>>();
    kept.set(db, answers);
    const last = answers.get(plantId);
    const changes = changesOf(db);
    const asOf = ofPhotos ? changes.ofPhotos(plantId) : changes.ofPlant(plantId);
    const answered = answerAsOf(last, asOf, asked, reckon, isSteady);
    putLast(answers, plantId, answered, most);
    return answered.answer;
  };
}

/** The same for what is reckoned from whole tables. */
export function rememberingTables<Answer>(
  tables: readonly AskedTable[],
  { isSteady = false }: Pick<Remembering, 'isSteady'> = {},
): (db: Database, asked: readonly unknown[], reckon: () => Answer) => Answer {
  const kept = new WeakMap<Database, Kept<Answer>>();
  return (db, asked, reckon) => {
    if (db.inTransaction) return reckon();
    const answered = answerAsOf(kept.get(db), changesOf(db).ofTables(tables), asked, reckon, isSteady);
    kept.set(db, answered);
    return answered.answer;
  };
}

function answerAsOf<Answer>(
  last: Kept<Answer> | undefined,
  asOf: number,
  asked: readonly unknown[],
  reckon: () => Answer,
  isSteady: boolean,
): Kept<Answer> {
  if (last?.asOf === asOf && isSame(last.asked, asked)) return last;
  const answer = reckon();
  const readsAsBefore =
    isSteady && last !== undefined && JSON.stringify(last.answer) === JSON.stringify(answer);
  return { asOf, asked, answer: readsAsBefore ? last.answer : answer };
}

function isSame(some: readonly unknown[], other: readonly unknown[]): boolean {
  return some.length === other.length && some.every((one, index) => Object.is(one, other[index]));
}

/** The same for whole answers, by name; what they hang on may be anything in the store. */
export function rememberingAnswers<Answer>({
  most,
}: Required<Pick<Remembering, 'most'>>): (
  db: Database,
  of: { readonly name: string; readonly asked: readonly unknown[] },
  reckon: () => Promise<Answer>,
) => Promise<Answer> {
  const kept = new WeakMap<Database, Map<string, Kept<Answer>>>();
  return async (db, { name, asked }, reckon) => {
    const answers = kept.get(db) ?? new Map<string, Kept<Answer>>();
    kept.set(db, answers);
    // Before it is reckoned: what is written meanwhile makes it one of before.
    const asOf = changesOf(db).ofAll();
    const last = answers.get(name);
    const isLast = last?.asOf === asOf && isSame(last.asked, asked);
    const answered = isLast ? last : { asOf, asked, answer: await reckon() };
    putLast(answers, name, answered, most);
    return answered.answer;
  };
}

/** Puts an answer behind all others, so that the first one is the one longest unasked; that one goes when there are too many. */
function putLast<Answer>(
  answers: Map<string, Kept<Answer>>,
  name: string,
  answered: Kept<Answer>,
  most: number,
): void {
  answers.delete(name);
  answers.set(name, answered);
  const [oldest] = answers.keys();
  if (answers.size > most && oldest !== undefined) answers.delete(oldest);
}
