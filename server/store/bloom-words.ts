import { z } from 'zod';
import { OFFERED_EVENTS, type OfferedEvent } from '../../core/bloom/bloom-offers.ts';
import { daySchema } from '../schemas/basics.ts';
import { allRows, type Database, run } from './database.ts';

const row = z.object({
  event: z.enum(OFFERED_EVENTS),
  said: z.enum(['yes', 'no']),
  day: daySchema,
  noteId: z.string().nullable(),
  /** Where the entry of an earlier yes stood before it was moved; `null` when it was added. */
  movedFrom: daySchema.nullable(),
});
export type BloomWord = z.infer<typeof row>;

/** What the grower said last of each date of the plant's bloom. */
export function bloomWordsOf(db: Database, plantId: string): BloomWord[] {
  return allRows(
    db,
    row,
    'SELECT event, said, day, note_id AS noteId, moved_from AS movedFrom FROM bloom_words WHERE plant_id = ? ORDER BY event',
    plantId,
  );
}

export function keepBloomWord(db: Database, plantId: string, word: BloomWord): void {
  run(
    db,
    `INSERT INTO bloom_words (plant_id, event, said, day, note_id, moved_from) VALUES (?, ?, ?, ?, ?, ?)
     ON CONFLICT (plant_id, event) DO UPDATE SET said = excluded.said, day = excluded.day,
       note_id = excluded.note_id, moved_from = excluded.moved_from`,
    plantId,
    word.event,
    word.said,
    word.day,
    word.noteId,
    word.movedFrom,
  );
}

export function dropBloomWord(db: Database, plantId: string, event: OfferedEvent): void {
  run(db, 'DELETE FROM bloom_words WHERE plant_id = ? AND event = ?', plantId, event);
}
