import { createStore } from '../parts/store.ts';
import { fetchAnswer, Refusal } from './fetch-json.ts';

/** Addresses whose answer in sight is from before, with the moment it came: the server is away. */
export const answersFrom = createStore<ReadonlyMap<string, number>>(new Map());

/** No network, or a proxy that does not find the server. */
const AWAY = new Set([0, 502, 503, 504]);

const keptAnswers = () => import('../kept/kept-answers.ts');

/** The first screen has the network to itself for so long; then the newest answers are put on the device. */
const FIRST_VIEW_MS = 5_000;
const newest = new Map<string, string>();
let isKeeping = false;

/**
 * Kept on the side: nobody waits for it, and where the browser keeps nothing it is left. As text: the browser copies what is put into its
 * database piece by piece, and the answer of a bench of 200 plants, read into 8 MB of objects, held a phone up for two seconds.
 */
function keepSoon(path: string, text: string): void {
  newest.set(path, text);
  if (isKeeping) return;
  isKeeping = true;
  setTimeout(
    () => {
      isKeeping = false;
      void keptAnswers()
        .then(({ keepAnswer }) => {
          for (const [one, answer] of newest) keepAnswer(one, answer);
          newest.clear();
        })
        .catch(() => {});
    },
    Math.max(0, FIRST_VIEW_MS - performance.now()),
  );
}

/**
 * Reads an address; while the server is away its last answer, marked in `answersFrom` as one from before.
 * Rejects with a `Refusal` when there is none, or when the server refuses.
 */
export async function fetchOrLast<Answer>(path: string, init: RequestInit): Promise<Answer> {
  try {
    const text = await (await fetchAnswer(path, init)).text();
    const answer = JSON.parse(text) as Answer;
    mark(path, null);
    keepSoon(path, text);
    return answer;
  } catch (fault) {
    if (!(fault instanceof Refusal && AWAY.has(fault.status))) throw fault;
    const last = await keptAnswers()
      .then(({ lastAnswer }) => lastAnswer(path))
      .catch(() => null);
    if (last === null) throw fault;
    const answer = JSON.parse(last.text) as Answer;
    mark(path, last.atMs);
    return answer;
  }
}

function mark(path: string, atMs: number | null): void {
  const before = answersFrom.read();
  if ((before.get(path) ?? null) === atMs) return;
  const next = new Map(before);
  if (atMs === null) next.delete(path);
  else next.set(path, atMs);
  answersFrom.write(next);
}
