import type { TurnRhythm } from '../../../core/light/next-turn.ts';
import { turnBetween, wholeTurn } from '../../../core/turned/circular-statistics.ts';
import { countWords } from '../words/plant-words.ts';
import { capital, potTurnWords, turnAmountWords } from '../words/turn-words.ts';

/** Degrees clockwise of one step of the rhythm. */
export function rhythmStepDeg({ byDeg, way }: TurnRhythm): number {
  return way === 'clockwise' ? byDeg : -byDeg;
}

/** "A quarter turn clockwise every 7 days", or that nobody reminds. */
export function rhythmWords(rhythm: TurnRhythm): string {
  const amount = capital(potTurnWords(rhythmStepDeg(rhythm)) ?? '');
  if (rhythm.everyDays === null) return `${amount} each time, without a reminder`;
  const often = rhythm.everyDays === 1 ? 'every day' : `every ${rhythm.everyDays} days`;
  return `${amount} ${often}`;
}

/** "Turned a quarter clockwise today": on the button that writes it down. */
export function turnedTodayWords(clockwiseDeg: number): string {
  const by = turnBetween(0, clockwiseDeg);
  const amount = turnAmountWords(by).replace(/( of)?( a)? turn$/, '');
  const way = Math.abs(by) > 179.9 ? ' round' : by > 0 ? ' clockwise' : ' anticlockwise';
  return `Turned ${amount}${way} today`;
}

/** The side that faces the light once the pot was turned clockwise: sides further round anticlockwise come to it. */
export function facesAfter(facesDeg: number, clockwiseDeg: number): number {
  return wholeTurn(facesDeg + clockwiseDeg);
}

/** "13 h 20". */
export function hoursWords(hours: number): string {
  const minutes = Math.round(hours * 60);
  return `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`;
}

/** "7 days". */
export function daysWords(days: number): string {
  return countWords(days, 'day');
}
