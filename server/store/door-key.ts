import { randomBytes } from 'node:crypto';
import { z } from 'zod';
import { type Database, oneRow, run } from './database.ts';

const row = z.object({ key: z.string() });

/** What the phones' cookies are signed with; made at the first asking. */
export function doorKey(db: Database): string {
  const kept = oneRow(db, row, 'SELECT key FROM door_key WHERE id = 1');
  if (kept !== null) return kept.key;
  const key = randomBytes(32).toString('base64url');
  run(db, 'INSERT INTO door_key (id, key) VALUES (1, ?)', key);
  return key;
}
