import { z } from 'zod';
import type { WorkWord } from '../../core/season/work-now.ts';
import { workWordSchema } from '../schemas/work.ts';
import { allRows, type Database, run } from './database.ts';

const row = z
  .object({
    plantId: z.string(),
    key: z.string(),
    said: z.string(),
    day: z.string(),
    reason: z.string(),
  })
  .transform(({ plantId, ...word }) => ({ plantId, word: workWordSchema.parse(word) }));

/** What the grower said of work, by plant id. */
export function allWorkWords(db: Database): Map<string, WorkWord[]> {
  const words = new Map<string, WorkWord[]>();
  for (const { plantId, word } of allRows(
    db,
    row,
    'SELECT plant_id AS plantId, work_key AS key, said, day, reason FROM work_words',
  )) {
    const together = words.get(plantId);
    if (together) together.push(word);
    else words.set(plantId, [word]);
  }
  return words;
}

/** Keeps a word; an earlier one on the same work gives way. */
export function keepWorkWord(db: Database, plantId: string, word: WorkWord): void {
  run(
    db,
    `INSERT INTO work_words (plant_id, work_key, said, day, reason) VALUES (?, ?, ?, ?, ?)
     ON CONFLICT (plant_id, work_key) DO UPDATE SET said = excluded.said, day = excluded.day, reason = excluded.reason`,
    plantId,
    word.key,
    word.said,
    word.day,
    word.said === 'skipped' ? word.reason : '',
  );
}

/** Takes a word back. */
export function takeBackWorkWord(db: Database, plantId: string, key: string): void {
  run(db, 'DELETE FROM work_words WHERE plant_id = ? AND work_key = ?', plantId, key);
}
