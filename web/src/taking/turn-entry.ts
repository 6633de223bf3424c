import { degreeWords } from '../words/turn-words.ts';

/** Turns that are offered by name: eighths, and what six and eight views need between them. */
export const OFFERED_TURNS = [0, 22.5, 30, 45, 60, 67.5, 90, 112.5, 120, 135, 150, 157.5, 180, 225, 270, 315];
export const UNKNOWN = 'unknown';
export const OTHER = 'other';

/** The turn of a view as it is entered: `degrees` stands when it is none of those offered. */
export interface TurnEntry {
  readonly choice: string;
  readonly degrees: string;
}

export function turnEntryOf(turnDeg: number | null): TurnEntry {
  if (turnDeg === null) return { choice: UNKNOWN, degrees: '' };
  return OFFERED_TURNS.includes(turnDeg)
    ? { choice: String(turnDeg), degrees: '' }
    : { choice: OTHER, degrees: degreeWords(turnDeg).replace('°', '') };
}

/** Reads the entry; `fault` when it is no turn. */
export function readTurn({
  choice,
  degrees,
}: TurnEntry):
  | { readonly ok: true; readonly turnDeg: number | null }
  | { readonly ok: false; readonly fault: string } {
  if (choice === UNKNOWN) return { ok: true, turnDeg: null };
  const said = choice === OTHER ? degrees.trim().replace(',', '.').replace('°', '') : choice;
  const turnDeg = Number(said);
  if (said === '' || !(turnDeg >= 0 && turnDeg < 360)) {
    return { ok: false, fault: 'Give the turn as 0 to 359 degrees, for example 90.' };
  }
  return { ok: true, turnDeg };
}
