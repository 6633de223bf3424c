import { LOG_WORDS, type LogKind } from '../../../../core/season/log-entry.ts';
import { countWords } from '../../words/plant-words.ts';
import type { BenchRow } from '../need-groups.ts';

/** "Watered: written down for 12 plants." */
export function doneWords(kind: LogKind, rows: readonly BenchRow[]): string {
  return `${LOG_WORDS[kind]}: written down for ${forWhom(rows)}.`;
}

/** "12 plants", or the name of the only one. */
export function forWhom(rows: readonly BenchRow[]): string {
  return rows.length === 1 ? (rows[0]?.plant.name ?? '') : countWords(rows.length, 'plant');
}
