import type { z } from 'zod';
import type { Day } from '../../../core/day/day.ts';
import type { manyRecordsAnswerSchema, manyRecordsSchema } from '../../../server/schemas/season.ts';
import { offerUndo } from '../parts/undo.ts';
import { fetchJson } from './fetch-json.ts';
import { refresh } from './queries.ts';
import { type Piece, sendWords, showOnBench, wordBefore } from './work-words.ts';

/** A stop or a log entry, as it is written down for many plants at once. */
export type RecordForMany = z.input<typeof manyRecordsSchema>['record'];

type NoteForMany = Extract<RecordForMany, { type: 'note' }>;

type TakeBack = () => Promise<void>;

/** Writes one thing down for many plants at once; can be taken back. */
export async function recordForMany(
  plantIds: readonly string[],
  record: RecordForMany,
  words: string,
): Promise<void> {
  await allAtOnce(words, [() => keepRecords(plantIds, record)]);
}

/**
 * Has work done, on one plant or on many; can be taken back. The bench shows it before the server has answered.
 *
 * @param recordOf the line of the log that says so, or `null` where the grower's word on the work is all there is
 */
export async function finishWork(
  work: readonly Piece[],
  recordOf: (piece: Piece) => Pick<NoteForMany, 'kind' | 'text'> | null,
  on: Day,
  words: string,
): Promise<void> {
  await showOnBench(work, { said: 'done', day: on });
  const told: Piece[] = [];
  const lines = new Map<string, { record: NoteForMany; plantIds: Set<string> }>();
  for (const piece of work) {
    const line = recordOf(piece);
    if (line === null) told.push(piece);
    else {
      const key = `${line.kind} ${line.text}`;
      const together = lines.get(key) ?? {
        record: { type: 'note', day: on, ...line },
        plantIds: new Set<string>(),
      };
      together.plantIds.add(piece.plantId);
      lines.set(key, together);
    }
  }
  await allAtOnce(words, [
    ...[...lines.values()].map(
      ({ record, plantIds }) =>
        () =>
          keepRecords([...plantIds], record),
    ),
    ...(told.length > 0 ? [() => tickOff(told, on)] : []),
  ]);
}

/** Does several things one after the other and offers to take back those that were done. */
async function allAtOnce(words: string, doings: readonly (() => Promise<TakeBack>)[]): Promise<void> {
  const done: TakeBack[] = [];
  try {
    for (const doing of doings) done.push(await doing());
  } finally {
    await refresh();
    if (done.length > 0) {
      offerUndo(words, async () => {
        try {
          for (const takeBack of done) await takeBack();
        } finally {
          await refresh();
        }
      });
    }
  }
}

async function keepRecords(plantIds: readonly string[], record: RecordForMany): Promise<TakeBack> {
  const { type, ids, turnIds } = await fetchJson<z.infer<typeof manyRecordsAnswerSchema>>('/records', {
    method: 'POST',
    json: { plantIds, record },
  });
  const left = new Set([...ids.map((id) => `/${type}s/${id}`), ...turnIds.map((id) => `/turns/${id}`)]);
  return async () => {
    // One by one, so that a broken line leaves the rest to the next try.
    for (const address of left) {
      await fetchJson(address, { method: 'DELETE' });
      left.delete(address);
    }
  };
}

async function tickOff(work: readonly Piece[], on: Day): Promise<TakeBack> {
  await sendWords(
    work.map(({ plantId, key }) => ({ plantId, word: { key, said: 'done', day: on } as const })),
  );
  return () => sendWords(work.map(wordBefore));
}
