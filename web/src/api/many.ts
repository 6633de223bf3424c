import type { z } from 'zod';
import { day } from '../../../core/day/day.ts';
import type { manyRecordsAnswerSchema, manyRecordsSchema } from '../../../server/schemas/season.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';
import { type Piece, sendWords, wordBefore } from './work-words.ts';

/** A stop or a log entry, as it is written down for many plants at once. */
export type RecordForMany = z.input<typeof manyRecordsSchema>['record'];

/**
 * Writes one thing down for many plants at once; can be taken back.
 *
 * @param ticked work that is done by it and that no record tells of, ticked off along
 */
export async function recordForMany(
  plantIds: readonly string[],
  record: RecordForMany,
  ticked: readonly Piece[],
  words: string,
): Promise<void> {
  const { type, ids } = await fetchJson<z.infer<typeof manyRecordsAnswerSchema>>('/records', {
    method: 'POST',
    json: { plantIds, record },
  });
  const left = new Set(ids);
  const takeBack = async () => {
    if (ticked.length > 0) await sendWords(ticked.map(wordBefore));
    try {
      // One by one, so that a broken line leaves the rest to the next try.
      for (const id of left) {
        await fetchJson(`/${type}s/${id}`, { method: 'DELETE' });
        left.delete(id);
      }
    } finally {
      await refresh();
    }
  };
  try {
    const on = day(record.day);
    const done = ticked.map(({ plantId, key }) => ({
      plantId,
      word: { key, said: 'done', day: on } as const,
    }));
    if (done.length > 0) await sendWords(done);
    else await refresh();
  } finally {
    offerUndo(words, takeBack);
  }
}
