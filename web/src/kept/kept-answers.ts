import { type KeptAnswer, keptDatabase } from './kept-database.ts';

/** The bench and the plants looked at last; further ones go, oldest first. */
const MOST_ANSWERS = 60;
/** While photos are being measured answers come in rows: only the last of them is written down. */
const SETTLED_MS = 1_500;

const unsettled = new Map<string, { answer: KeptAnswer; clock: ReturnType<typeof setTimeout> }>();

/** Keeps the newest answer of an address for when the server is away. What cannot be kept is then not there; nothing else fails. */
export function keepAnswer(path: string, text: string): void {
  clearTimeout(unsettled.get(path)?.clock);
  const answer = { path, atMs: Date.now(), text };
  const clock = setTimeout(() => {
    unsettled.delete(path);
    write(answer).catch(() => {});
  }, SETTLED_MS);
  unsettled.set(path, { answer, clock });
}

/** The last answer of an address, and when it came; `null` when none is kept. */
export async function lastAnswer(path: string): Promise<KeptAnswer | null> {
  const waiting = unsettled.get(path)?.answer;
  if (waiting) return waiting;
  const kept: Partial<KeptAnswer> | undefined = await (await keptDatabase()).get('answers', path);
  // An earlier app kept answers in another form: they are as good as none.
  return kept?.text === undefined ? null : (kept as KeptAnswer);
}

/** A device that is let out keeps its photos, and nothing of the bench. */
export async function forgetAnswers(): Promise<void> {
  for (const { clock } of unsettled.values()) clearTimeout(clock);
  unsettled.clear();
  await (await keptDatabase()).clear('answers');
}

async function write(answer: KeptAnswer): Promise<void> {
  const { store, done } = (await keptDatabase()).transaction('answers', 'readwrite');
  await store.put(answer);
  const tooMany = (await store.count()) - MOST_ANSWERS;
  if (tooMany > 0) {
    const oldest = await store.index('byTime').getAllKeys(null, tooMany);
    await Promise.all(oldest.map((path) => store.delete(path)));
  }
  await done;
}
