import type { Day } from '../day/day.ts';

/** What is done to a plant and seen on it. Stops are kept with their depth in a list of their own. */
export const LOG_KINDS = [
  'watered',
  'fed',
  'potted-on',
  'turned',
  'cleared-leaf',
  'looked-under-leaves',
  'took-missed-tips',
  'seen-whitefly',
  'seen-grey-mould',
  'seen-wilt',
  'seen-breaks',
  'first-flower',
  'full-bloom',
  'bloom-taken-off',
  'bloom-over',
  'show-result',
  'note',
] as const;
export type LogKind = (typeof LOG_KINDS)[number];

export interface LogEntry {
  readonly id: string;
  readonly plantId: string;
  readonly kind: LogKind;
  readonly day: Day;
  /** The grower's words; may be empty. */
  readonly text: string;
}

/** Each kind as it is read in a list, on the trend and on a button. */
export const LOG_WORDS: Readonly<Record<LogKind, string>> = {
  watered: 'Watered',
  fed: 'Fed',
  'potted-on': 'Potted on',
  turned: 'Turned',
  'cleared-leaf': 'Cleared yellow and dead leaf',
  'looked-under-leaves': 'Looked under the leaves',
  'took-missed-tips': 'Took the missed tips',
  'seen-whitefly': 'Whitefly seen',
  'seen-grey-mould': 'Grey mould seen',
  'seen-wilt': 'Limp from drought',
  'seen-breaks': 'Breaks seen',
  'first-flower': 'First flower open',
  'full-bloom': 'In full bloom',
  'bloom-taken-off': 'Bloom taken off',
  'bloom-over': 'Bloom over',
  'show-result': 'At the show',
  note: 'Note',
};

/** Kinds that may explain a fall in the score, to be drawn on the trend. */
export const EXPLAINS_SHAPE: readonly LogKind[] = [
  'potted-on',
  'cleared-leaf',
  'took-missed-tips',
  'seen-whitefly',
  'seen-grey-mould',
  'seen-wilt',
  'bloom-taken-off',
];

/** The first entry of a kind from one day to another, both counted; `null` when there is none. */
export function firstOfKind(
  log: readonly LogEntry[],
  kinds: readonly LogKind[],
  from: Day,
  to: Day | null,
): LogEntry | null {
  const found = log
    .filter(({ kind, day }) => kinds.includes(kind) && day >= from && (to === null || day <= to))
    .sort((one, other) => (one.day < other.day ? -1 : 1));
  return found[0] ?? null;
}
