import type { Standing } from './frame-fit.ts';

/** How far the camera stands from where it stood, each as its own share. */
export interface Moved {
  /** Length of the shift ÷ longer side of the picture. */
  readonly shiftShare: number;
  readonly turnDeg: number;
  readonly zoom: number;
}

/**
 * Bounds of `standing`; the worst of the three decides.
 *
 * `same`: up to here nothing is worth a word. 0.4 % of the longer side is 6 px of 1600, about 2 mm at a usual stand;
 * 0.3° and 0.5 % are what a good tripod leaves from week to week.
 *
 * `moved`: corrected silently and noted. 5 % of the longer side is about 3 cm at a usual stand 1.2 m away, so that the
 * plant is seen from another side by less than 1.5°, inside the 2° that its turn is taken to be good to. A turn of 5° and a
 * zoom of 8 % are put right by turning and scaling the outline. What lies beyond is `far`: the plant is seen from
 * another side or height, which no correction of the picture undoes.
 *
 * All bounds are our own choice.
 */
export const STANDING_LIMITS = {
  same: { shiftShare: 0.004, turnDeg: 0.3, zoom: 1.005 },
  moved: { shiftShare: 0.05, turnDeg: 5, zoom: 1.08 },
} as const;

export function standingOf(move: Moved): Standing {
  const within = ({ shiftShare, turnDeg, zoom }: Moved) =>
    move.shiftShare <= shiftShare &&
    Math.abs(move.turnDeg) <= turnDeg &&
    Math.max(move.zoom, 1 / move.zoom) <= zoom;
  if (within(STANDING_LIMITS.same)) return 'same';
  return within(STANDING_LIMITS.moved) ? 'moved' : 'far';
}
