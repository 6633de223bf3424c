import type { Bench } from '../../../server/schemas/pages.ts';
import { type Urgency, urgencyOfRow } from '../words/need-words.ts';

export type BenchRow = Bench['plants'][number];

/** Plants under one heading; `urgency` where they stand together by what they need. */
export interface RowGroup {
  readonly key: string;
  readonly words: string;
  readonly urgency: Urgency | null;
  readonly rows: readonly BenchRow[];
}

/** Plants by what they need, the neediest first; only groups that have plants. */
export function needGroups(rows: readonly BenchRow[]): RowGroup[] {
  return ([3, 2, 1, 0] as const)
    .map((urgency) => ({
      key: String(urgency),
      words: '',
      urgency,
      rows: rows.filter((row) => urgencyOfRow(row) === urgency),
    }))
    .filter((group) => group.rows.length > 0);
}
