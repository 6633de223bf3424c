import type { Piece } from '../../api/work-words.ts';

/** Whether work is to be done today: its day has come and its use has not ended. */
export function isWantedNow({ state }: Pick<Piece, 'state'>): boolean {
  return state === 'due' || state === 'overdue';
}
