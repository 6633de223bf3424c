import { wholeTurn } from '../turned/circular-statistics.ts';
import type { LightLedger } from './light-ledger.ts';
import type { NextTurn, TurnRhythm } from './next-turn.ts';

/** What a plant's next turn follows from. */
export interface TurnKnown {
  readonly ledger: Pick<LightLedger, 'nowFacesDeg'>;
  readonly next: Pick<NextTurn, 'toLightAzimuthDeg'> | null;
  readonly rhythm: TurnRhythm;
}

/**
 * The side that faces the light after the turn that is advised, or else the rhythm's.
 *
 * @returns its azimuth, degrees; `null` while it is not known which side faces the light now
 */
export function facesAfterUsualTurn({ ledger, next, rhythm }: TurnKnown): number | null {
  const { nowFacesDeg } = ledger;
  if (nowFacesDeg === null) return null;
  // A clockwise turn brings a side further round anticlockwise to the light.
  const step = rhythm.way === 'clockwise' ? rhythm.byDeg : -rhythm.byDeg;
  return next?.toLightAzimuthDeg ?? wholeTurn(nowFacesDeg + step);
}
