import type { WorkWord } from '../../core/season/work-now.ts';
import { workWordSchema } from '../schemas/work.ts';
import { allRows, type Database, run } from './database.ts';

/** What the grower said of a plant's work. */
export function workWordsOfPlant(db: Database, plantId: string): WorkWord[] {
  return allRows(
    db,
    workWordSchema,
    'SELECT work_key AS key, said, day, reason FROM work_words WHERE plant_id = ?',
    plantId,
  );
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
