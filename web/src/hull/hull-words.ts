import type { TurnedReport } from '../../../core/turned/measure-turned.ts';
import { placeWords, sideWords } from '../../../core/turned/place-words.ts';
import type { HullSolid } from '../../../server/schemas/turned.ts';
import { readTurned, TURNED_NAMES } from '../plan/turned-readings.ts';
import { capital } from '../words/turn-words.ts';
import type { Turning } from './turning.ts';

/** "The 3 o’clock side is in front, seen from 20° above the level." */
export function lookWords({ turnDeg, tiltDeg }: Turning): string {
  if (tiltDeg > 80) return `Seen from above, ${sideWords(turnDeg)} at the foot of the picture.`;
  const from = tiltDeg < 5 ? 'from the side' : `from ${Math.round(tiltDeg)}° above the level`;
  return `${capital(sideWords(turnDeg))} is in front, seen ${from}.`;
}

/** The solid in words, for whoever hears the screen. */
export function solidHeard(report: TurnedReport, solid: HullSolid): string {
  const numbers = (['ball', 'volume', 'sphericity', 'outOfRound'] as const).flatMap((measure) => {
    const { value, unit } = readTurned(report, measure);
    return value === null ? [] : [`${TURNED_NAMES[measure]} ${value} ${unit}`.trim()];
  });
  const sides = [
    solid.weakAzimuthDeg === null ? null : `weak side at ${placeWords(solid.weakAzimuthDeg)}`,
    solid.heavyAzimuthDeg === null ? null : `heavy side at ${placeWords(solid.heavyAzimuthDeg)}`,
  ].filter((words) => words !== null);
  const marked = sides.length === 0 ? 'No side is weak or heavy' : capital(sides.join(', '));
  return `The solid that all outlines allow. ${numbers.join('; ')}. ${marked}. Seen from above, the mark at 6 o’clock.`;
}
