import { turnBetween } from '../../../core/turned/circular-statistics.ts';

/** Turns that have a name, in degrees. */
const NAMED_TURNS: readonly (readonly [deg: number, words: string])[] = [
  [22.5, 'a sixteenth of a turn'],
  [30, 'a twelfth of a turn (one hour)'],
  [45, 'an eighth of a turn'],
  [60, 'a sixth of a turn (two hours)'],
  [67.5, 'three sixteenths of a turn'],
  [90, 'a quarter turn'],
  [112.5, 'five sixteenths of a turn'],
  [120, 'a third of a turn'],
  [135, 'three eighths of a turn'],
  [150, 'five twelfths of a turn'],
  [157.5, 'seven sixteenths of a turn'],
  [180, 'half a turn'],
];

/** "a quarter turn", or degrees where the amount has no name; the way is left out. */
export function turnAmountWords(deg: number): string {
  const amount = Math.abs(deg);
  const named = NAMED_TURNS.find(([named]) => Math.abs(named - amount) < 0.01);
  return named ? named[1] : degreeWords(amount);
}

/** "a quarter turn clockwise"; half a turn has no way, and nothing to turn is `null`. */
export function potTurnWords(clockwiseDeg: number): string | null {
  const by = turnBetween(0, clockwiseDeg);
  if (Math.abs(by) < 0.01) return null;
  const amount = turnAmountWords(by);
  if (Math.abs(by) > 179.9) return amount;
  return `${amount} ${by > 0 ? 'clockwise' : 'anticlockwise'}`;
}

/** "22.5°", "90°". */
export function degreeWords(deg: number): string {
  return `${Math.round(deg * 10) / 10}°`;
}

/** "A quarter turn clockwise" at the beginning of a sentence. */
export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
