import { randomBytes } from 'node:crypto';
import { z } from 'zod';
import { type Database, oneRow, run } from './database.ts';

const row = z.object({ key: z.string() });

/** The part of the calendar's address that cannot be guessed; made at the first asking. */
export function calendarKey(db: Database): string {
  const kept = oneRow(db, row, 'SELECT key FROM calendar_key WHERE id = 1');
  if (kept !== null) return kept.key;
  const key = randomBytes(18).toString('base64url');
  run(db, 'INSERT INTO calendar_key (id, key) VALUES (1, ?)', key);
  return key;
}
