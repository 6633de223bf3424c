import { LOG_WORDS, type LogKind } from '../../../../core/season/log-entry.ts';
import type { WorkKind } from '../../../../core/season/work.ts';
import type { Piece } from '../../api/work-words.ts';
import { countWords } from '../../words/plant-words.ts';
import type { BenchRow } from '../need-groups.ts';
import { isWantedNow } from '../work/is-wanted-now.ts';

/** Work that a log entry does, but that is not counted from the log by itself. */
const TICKS_OFF: Readonly<Partial<Record<LogKind, WorkKind>>> = { turned: 'turn' };

/** The waiting work of these plants that is done by writing `kind` down. */
export function workDoneBy(kind: LogKind, rows: readonly BenchRow[]): Piece[] {
  const does = TICKS_OFF[kind];
  if (does === undefined) return [];
  return rows.flatMap(({ work }) => work.filter((piece) => piece.kind === does && isWantedNow(piece)));
}

/** "Watered: written down for 12 plants." */
export function doneWords(kind: LogKind, rows: readonly BenchRow[]): string {
  return `${LOG_WORDS[kind]}: written down for ${forWhom(rows)}.`;
}

/** "12 plants", or the name of the only one. */
export function forWhom(rows: readonly BenchRow[]): string {
  return rows.length === 1 ? (rows[0]?.plant.name ?? '') : countWords(rows.length, 'plant');
}
