import type { WorkWord } from '../../../core/season/work-now.ts';
import type { Bench } from '../../../server/schemas/pages.ts';
import type { WorkWords } from '../../../server/schemas/work.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { benchQuery, queryClient, refresh } from './queries.ts';

type Word = WorkWords['words'][number];

/** A piece of dated work as it stands. */
export type Piece = Bench['plants'][number]['work'][number];

/** What the grower says of work, without its key. */
export type Said = WorkWord extends infer One ? (One extends WorkWord ? Omit<One, 'key'> : never) : never;

/** Says the same of one piece of work or of many; can be taken back. The bench shows it before the server has answered. */
export async function sayOfWork(work: readonly Piece[], said: Said, words: string): Promise<void> {
  await showOnBench(work, said);
  await sendWords(work.map(({ key, plantId }) => ({ plantId, word: { ...said, key } as WorkWord })));
  offerUndo(words, () => sendWords(work.map(wordBefore)));
}

/** Takes back what was said of a piece of work: it stands on the list again. */
export async function takeBackWork({ key, plantId }: Piece): Promise<void> {
  await sendWords([{ plantId, word: { key, said: null } }]);
}

/** Work that was moved goes back to the day it was moved to; other work to having no word. */
export function wordBefore({ key, plantId, day, movedFrom }: Piece): Word {
  return { plantId, word: movedFrom === null ? { key, said: null } : { key, said: 'moved', day } };
}

export async function sendWords(words: readonly Word[]): Promise<void> {
  const plantIds = new Set(words.map(({ plantId }) => plantId));
  try {
    await fetchJson('/work/words', { method: 'POST', json: { words } });
  } finally {
    await refresh(plantIds.size === 1 ? words[0]?.plantId : undefined);
  }
}

const SHOWN_AT_ONCE = { done: 'Done.', skipped: 'Skipped.' } as const;

/** Shows work as settled on the bench until the server has answered. */
export async function showOnBench(work: readonly Piece[], { said }: Said): Promise<void> {
  if (said === 'moved') return;
  // An answer asked for before the tap would put the work back on the list.
  await queryClient.cancelQueries({ queryKey: benchQuery.queryKey });
  const keys = new Set(work.map(({ key }) => key));
  const settled = { state: said, stateInWords: SHOWN_AT_ONCE[said] };
  queryClient.setQueryData(
    benchQuery.queryKey,
    (bench) =>
      bench && {
        ...bench,
        plants: bench.plants.map((row) => ({
          ...row,
          work: row.work.map((one) => (keys.has(one.key) ? { ...one, ...settled } : one)),
        })),
      },
  );
}
