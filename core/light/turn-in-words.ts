import { sideWords } from '../turned/place-words.ts';

/** A turn smaller than this is not worth moving a pot for, degrees. */
export const LEAST_TURN_DEG = 22.5;

/**
 * "A quarter turn clockwise: bring the 9 o'clock side to the light."
 *
 * @param turnByDeg anticlockwise seen from above; `null` when the light's side is not known
 * @param toLightAzimuthDeg the side that shall face the light
 */
export function turnInWords(turnByDeg: number | null, toLightAzimuthDeg: number): string {
  return turnOfSideInWords(turnByDeg, sideWords(toLightAzimuthDeg));
}

/** The same for a side of any name: "A quarter turn clockwise: bring its left side to the light." */
export function turnOfSideInWords(turnByDeg: number | null, side: string): string {
  if (turnByDeg === null) return `Bring ${side} to the light.`;
  const by = Math.abs(turnByDeg);
  if (by < LEAST_TURN_DEG) return `Leave it as it stands: ${side} already faces the light.`;
  const eighths = Math.round(by / 45);
  if (eighths === 4) return `Half a turn: bring ${side} to the light.`;
  const amount = ['', 'An eighth of a turn', 'A quarter turn', 'Three eighths of a turn'][eighths] as string;
  return `${amount} ${turnByDeg > 0 ? 'anticlockwise' : 'clockwise'}: bring ${side} to the light.`;
}
