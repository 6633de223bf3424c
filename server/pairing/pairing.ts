import { parse } from 'cookie';
import { sign, unsign } from 'cookie-signature';
import type { Logger } from 'pino';
import type { Database } from '../store/database.ts';
import { doorKey } from '../store/door-key.ts';
import { addPhone, notePhoneSeen, type PhoneRow, phoneById, setPhoneLetOut } from '../store/phones.ts';
import { type CodeDesk, type CodeOutcome, createCodeDesk } from './code-desk.ts';

/** Name of the cookie that a phone carries. Its value is the phone's id, signed. */
export const PHONE_COOKIE = 'rondure-phone';

/** Written at most so often: a page asks many times a minute. */
const SEEN_EVERY_MS = 10 * 60_000;

/** Which phones are let in, and how one comes in. */
export interface Pairing {
  readonly codes: Pick<CodeDesk, 'show'>;
  /** Takes a code; with a right one the phone is on the list and `cookie` is its key. */
  letIn(told: {
    readonly code: string;
    readonly name: string;
    readonly from: string;
  }): Exclude<CodeOutcome, { ok: true }> | { readonly ok: true; readonly cookie: string };
  /** What a phone on the list carries. */
  cookieFor(id: string): string;
  /** The phone that a Cookie header belongs to, also one that was let out; `null` when it is none of ours. */
  phoneOf(cookieHeader: string | undefined): PhoneRow | null;
  noteSeen(phone: PhoneRow): void;
  /** Lets a phone out, or in again; `false` when there is no such phone. */
  setLetOut(id: string, out: boolean): boolean;
  /** Calls `end` when the phone is let out. Returns what stops the watch. */
  watch(id: string, end: () => void): () => void;
}

export function createPairing(db: Database, log: Logger, nowMs: () => number = Date.now): Pairing {
  const desk = createCodeDesk(nowMs);
  const watches = new Set<{ readonly id: string; readonly end: () => void }>();

  const cookieFor = (id: string) => sign(id, doorKey(db));

  return {
    codes: desk,
    cookieFor,
    letIn({ code, name, from }) {
      const outcome = desk.take(code, from);
      if (!outcome.ok) return outcome;
      const id = addPhone(db, name, new Date(nowMs()).toISOString());
      return { ok: true, cookie: cookieFor(id) };
    },
    phoneOf(cookieHeader) {
      const signed = parse(cookieHeader ?? '')[PHONE_COOKIE];
      const id = signed ? unsign(signed, doorKey(db)) : false;
      return id === false ? null : phoneById(db, id);
    },
    noteSeen(phone) {
      if (nowMs() - Date.parse(phone.lastSeenAt) < SEEN_EVERY_MS) return;
      try {
        notePhoneSeen(db, phone.id, new Date(nowMs()).toISOString());
      } catch (fault) {
        // A full disk must not keep a phone from reading.
        log.warn({ err: fault }, 'when a phone was last seen was not noted');
      }
    },
    setLetOut(id, out) {
      const known = setPhoneLetOut(db, id, out ? new Date(nowMs()).toISOString() : null);
      if (out) for (const watch of [...watches]) if (watch.id === id) watch.end();
      return known;
    },
    watch(id, end) {
      const watch = { id, end };
      watches.add(watch);
      return () => watches.delete(watch);
    },
  };
}
