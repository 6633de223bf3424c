import type { LogKind } from '../../../../core/season/log-entry.ts';
import type { Piece } from '../../api/work-words.ts';
import { recordOfDone } from '../../season/work/done-record.ts';

/** The line of the log by which work is done, as a plant's own page writes it; `null` where there is none. */
export function logLineOf(piece: Piece): { kind: LogKind; text: string } | null {
  const kind = recordOfDone(piece);
  if (kind === null) return null;
  return { kind, text: kind === 'fed' || kind === 'potted-on' ? piece.what : '' };
}
