import type { WorkWord } from '../../../core/season/work-now.ts';
import type { Bench } from '../../../server/schemas/pages.ts';
import type { WorkWords } from '../../../server/schemas/work.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';

type Word = WorkWords['words'][number];

/** A piece of dated work as it stands. */
export type Piece = Bench['plants'][number]['work'][number];

/** What the grower says of work, without its key. */
export type Said = WorkWord extends infer One ? (One extends WorkWord ? Omit<One, 'key'> : never) : never;

/** Says the same of one piece of work or of many; can be taken back. */
export async function sayOfWork(work: readonly Piece[], said: Said, words: string): Promise<void> {
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

async function sendWords(words: readonly Word[]): Promise<void> {
  await fetchJson('/work/words', { method: 'POST', json: { words } });
  const plantIds = new Set(words.map(({ plantId }) => plantId));
  await refresh(plantIds.size === 1 ? words[0]?.plantId : undefined);
}
