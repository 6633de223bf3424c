import { randomInt } from 'node:crypto';
import { isSameSecret } from './same-secret.ts';
import { createSlowDown, type Patience } from './slow-down.ts';

/** A code as the desk shows it. */
export interface ShownCode {
  readonly code: string;
  readonly untilMs: number;
}

/** What comes of a code that a phone gives. */
export type CodeOutcome =
  | { readonly ok: true }
  | { readonly ok: false; readonly reason: 'wrong' }
  | { readonly ok: false; readonly reason: 'wait'; readonly waitMs: number };

/** Long enough to walk to the greenhouse, or to find the phone. */
export const CODE_LIFE_MS = 10 * 60_000;

const MINUTE = 60_000;
/** One phone: three slips of the thumb are free. */
const EACH: Patience = { free: 3, firstWaitMs: 2_000, longestWaitMs: 5 * MINUTE, forgetAfterMs: 30 * MINUTE };
/** All together, for whoever changes addresses: some twenty tries of a million fit into a code's life. */
const ALL: Patience = { free: 8, firstWaitMs: 1_000, longestWaitMs: 60_000, forgetAfterMs: 30 * MINUTE };

/** Shows codes of six digits, one at a time, each good once and for ten minutes. */
export interface CodeDesk {
  show(): ShownCode;
  /** `from` is the address that the code comes from. */
  take(code: string, from: string): CodeOutcome;
}

export function createCodeDesk(nowMs: () => number): CodeDesk {
  let shown: ShownCode | null = null;
  const each = createSlowDown(EACH);
  const all = createSlowDown(ALL);

  return {
    show() {
      shown = { code: String(randomInt(1_000_000)).padStart(6, '0'), untilMs: nowMs() + CODE_LIFE_MS };
      return shown;
    },
    take(code, from) {
      const now = nowMs();
      const waitMs = Math.max(each.waitMs(from, now), all.waitMs('all', now));
      // Not even looked at: a right guess must not shine through the wait.
      if (waitMs > 0) return { ok: false, reason: 'wait', waitMs };
      const live = shown !== null && now < shown.untilMs ? shown.code : null;
      // Compared with something in any case, so that time does not tell whether a code is shown.
      const same = isSameSecret(code.replace(/\D/g, ''), live ?? 'none');
      if (live === null || !same) {
        each.noteWrong(from, now);
        all.noteWrong('all', now);
        return { ok: false, reason: 'wrong' };
      }
      shown = null;
      each.forget(from);
      return { ok: true };
    },
  };
}
