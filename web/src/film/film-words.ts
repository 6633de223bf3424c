import type { FilmAbsence } from '../../../core/film/film-photo.ts';
import type { HeldBy } from '../../../core/film/lay-in-line.ts';

/** Why a photo is not in the film. */
export const ABSENCE_WORDS: Readonly<Record<FilmAbsence, string>> = {
  waiting: 'not measured yet',
  'left-out': 'its sitting is left out by you',
  'other-place': 'taken from another camera place',
  'camera-moved': 'the camera stood too far from its place',
  'nothing-to-hold': 'neither the stand nor the pot’s rim could be told in it',
  'other-size': 'a photo of another size or shape',
  'same-day': 'another photo of that day is shown',
};

/** "mark to the camera", "turned 90°". */
export function sideWords(sideDeg: number): string {
  return sideDeg === 0 ? 'mark to the camera' : `turned ${sideDeg}°`;
}

/** Pictures a second. */
export const SPEEDS = { slow: 1, middle: 3, fast: 8 } as const;
export type Speed = keyof typeof SPEEDS;
export const SPEED_WORDS: Readonly<Record<Speed, string>> = { slow: 'Slow', middle: 'Middle', fast: 'Fast' };

/** What holds the pictures in line. */
export const HELD_WORDS: Readonly<Record<HeldBy, string>> = {
  stand: 'Held still by what stands still in the picture, as each photo’s report tells it.',
  rim: 'Held still by the pot’s rim: no picture of the empty stand tells more. A pot that was put down elsewhere moves the background.',
  edges: 'Leaves hide the rim in some, and those lie as they were taken.',
};
