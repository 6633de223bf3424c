import { looksLimp, type StatureReading, type WiltFinding } from '../../../core/vigour/wilt.ts';
import { count, note } from '../growth/tally.ts';

/** What a figures program notes of each plant, in this order; in the tally each stands behind the row's name. */
export const NOTED = ['height', 'spread', 'middle', 'tightness', 'out'] as const;

/** Judges a plant against the same plant firm, with nothing in the log, and counts it in a row of the table. */
export function judged(row: string, now: StatureReading, before: StatureReading): WiltFinding {
  const found = looksLimp(now, [before], { cutDays: [], dryUntil: null });
  if (!found.ok) throw new Error(found.hint);
  count(row, found.isLimp);
  for (const measure of ['height', 'spread', 'middle', 'tightness'] as const) {
    note(`${row} ${measure}`, -100 * found.fallen[measure]);
  }
  note(`${row} out`, 100 * found.hangsOut);
  return found;
}
