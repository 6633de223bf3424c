import type { Day } from '../../../../core/day/day.ts';
import { LOG_WORDS } from '../../../../core/season/log-entry.ts';
import type { PlantPage } from '../../../../server/schemas/pages.ts';
import { writeInLog } from '../../api/log.ts';
import { type Piece, sayOfWork } from '../../api/work-words.ts';
import { recordUsualTurn } from '../../light/record-usual-turn.ts';
import { recordOfDone } from './done-record.ts';

/** Has a piece of work done today: by the record that says so where there is one, else by the grower's word on it. */
export async function recordDone(piece: Piece, page: PlantPage, today: Day): Promise<void> {
  const { plant, light } = page;
  if (piece.kind === 'turn' && light.ledger.nowFacesDeg !== null) return recordUsualTurn(page, today);
  const kind = recordOfDone(piece);
  if (kind !== null) {
    const text = kind === 'fed' || kind === 'potted-on' ? piece.what : '';
    return writeInLog(plant.id, { day: today, kind, text }, `Written down: ${LOG_WORDS[kind]}, today.`);
  }
  return sayOfWork([piece], { said: 'done', day: today }, `Done: ${piece.what}`);
}
