import type { LogKind } from '../../../../core/season/log-entry.ts';
import type { Piece } from '../../api/work-words.ts';

/** Work whose doing is a line of the log, so that what comes round is counted from it. */
const RECORDED_AS: Partial<Record<Piece['kind'], LogKind>> = {
  turn: 'turned',
  'look-over': 'cleared-leaf',
  'look-again': 'looked-under-leaves',
  'take-off-bloom': 'bloom-taken-off',
  feed: 'fed',
  'pot-on': 'potted-on',
};

/** The line of the log that says that a piece of work was done; `null` where the grower's word on the work is all there is. */
export function recordOfDone({ kind }: Pick<Piece, 'kind'>): LogKind | null {
  return RECORDED_AS[kind] ?? null;
}
