import { randomUUID } from 'node:crypto';
import { z } from 'zod';
import { allRows, type Database, oneRow, run } from './database.ts';

const phoneRow = z.object({
  id: z.string(),
  name: z.string(),
  firstSeenAt: z.string(),
  lastSeenAt: z.string(),
  /** When it was let out again; `null` while it is let in. */
  letOutAt: z.string().nullable(),
});
/** A phone or other device that was let in. */
export type PhoneRow = z.infer<typeof phoneRow>;

const PHONE = `SELECT id, name, first_seen_at AS firstSeenAt, last_seen_at AS lastSeenAt, let_out_at AS letOutAt
  FROM phones`;

export function phoneById(db: Database, id: string): PhoneRow | null {
  return oneRow(db, phoneRow, `${PHONE} WHERE id = ?`, id);
}

/** The phones that are let in, the one seen last first. */
export function phonesLetIn(db: Database): PhoneRow[] {
  return allRows(db, phoneRow, `${PHONE} WHERE let_out_at IS NULL ORDER BY last_seen_at DESC, rowid DESC`);
}

/** Puts a phone on the list; its id. */
export function addPhone(db: Database, name: string, at: string): string {
  const id = randomUUID();
  run(db, 'INSERT INTO phones (id, name, first_seen_at, last_seen_at) VALUES (?, ?, ?, ?)', id, name, at, at);
  return id;
}

export function notePhoneSeen(db: Database, id: string, at: string): void {
  run(db, 'UPDATE phones SET last_seen_at = ? WHERE id = ?', at, id);
}

/** Notes that a phone was let out, or with `null` that it is in again; `false` when there is no such phone. */
export function setPhoneLetOut(db: Database, id: string, at: string | null): boolean {
  return run(db, 'UPDATE phones SET let_out_at = ? WHERE id = ?', at, id) > 0;
}
