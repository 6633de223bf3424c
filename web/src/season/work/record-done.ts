import type { Day } from '../../../../core/day/day.ts';
import { LOG_WORDS } from '../../../../core/season/log-entry.ts';
import { sideWords } from '../../../../core/turned/place-words.ts';
import type { PlantPage } from '../../../../server/schemas/pages.ts';
import { writeInLog } from '../../api/log.ts';
import { recordTurn } from '../../api/turns.ts';
import { type Piece, sayOfWork } from '../../api/work-words.ts';
import { facesAfter, rhythmStepDeg } from '../../light/light-words.ts';
import { recordOfDone } from './done-record.ts';

/** Has a piece of work done today: by the record that says so where there is one, else by the grower's word on it. */
export async function recordDone(piece: Piece, page: PlantPage, today: Day): Promise<void> {
  const { plant, light } = page;
  const { nowFacesDeg } = light.ledger;
  if (piece.kind === 'turn' && nowFacesDeg !== null) {
    const facesLightDeg = facesAfter(nowFacesDeg, light.next?.turnByDeg ?? rhythmStepDeg(plant.turnRhythm));
    const words = `Written down: ${sideWords(facesLightDeg)} faces the light from today.`;
    return recordTurn(plant.id, { day: today, facesLightDeg }, words);
  }
  const kind = recordOfDone(piece);
  if (kind !== null) {
    const text = kind === 'fed' || kind === 'potted-on' ? piece.what : '';
    return writeInLog(plant.id, { day: today, kind, text }, `Written down: ${LOG_WORDS[kind]}, today.`);
  }
  return sayOfWork([piece], { said: 'done', day: today }, `Done: ${piece.what}`);
}
