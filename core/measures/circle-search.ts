import type { PointPx } from '../raster/raster.ts';

/** A centre and the value found there. */
export interface FoundCentre {
  readonly centre: PointPx;
  readonly value: number;
}

interface Square {
  readonly centre: PointPx;
  readonly half: number;
  readonly value: number;
}

/** Where to look for a centre, how steep the value can be, and when to stop. */
export interface CentreSearch {
  /**
   * Value to be made as small as possible. Where it is sure to be `most` or above any number from `most` up may be given:
   * that square is thrown away.
   */
  readonly valueAt: (centre: PointPx, most: number) => number;
  /** The most the value can change when the centre moves by one. */
  readonly steepness: number;
  /** Middle and half side of the square to search. */
  readonly middle: PointPx;
  readonly half: number;
  /** A good centre known beforehand: a better start prunes more. */
  readonly start: FoundCentre;
  /** Squares no larger than this half side are not divided further. */
  readonly finest: number;
}

/** A hair more than a square's reach, so that rounding throws none away that would be kept. */
const BEYOND = 1 + 1e-9;
/** Squares of one size looked into, at most: along a flat valley there would be millions. */
const MOST_SQUARES = 4000;

/**
 * Finds where in a square a value is smallest, however many local minima there are.
 *
 * Branch and bound: a square is thrown away when even at the steepest descent it could not beat the best centre known,
 * and divided in four otherwise. Of more than 4000 squares of one size only the best are looked into.
 *
 * @returns the best centre found; the true smallest value is at most steepness × finest × √2 below it, unless there were more
 * than 4000 squares of one size: then it lies in a valley so flat that the best centre is as good as any
 *
 * Reference: Land and Doig (1960), An automatic method of solving discrete programming problems.
 *
 * Example: the distance to (3, 4), steepness 1, ends within finest·√2 of (3, 4).
 */
export function searchCentre(search: CentreSearch): FoundCentre {
  const { valueAt, steepness, finest } = search;
  let best = search.start;
  let squares: Square[] = [
    {
      centre: search.middle,
      half: search.half,
      value: valueAt(search.middle, Number.POSITIVE_INFINITY),
    },
  ];
  while (squares.length > 0) {
    const children: Square[] = [];
    for (const square of squares) {
      if (square.value - steepness * square.half * Math.SQRT2 >= best.value) continue;
      const half = square.half / 2;
      for (const [right, down] of QUARTERS) {
        const centre: PointPx = [square.centre[0] + right * half, square.centre[1] + down * half];
        const value = valueAt(centre, best.value + BEYOND * steepness * half * Math.SQRT2);
        if (value < best.value) best = { centre, value };
        children.push({ centre, half, value });
      }
    }
    squares = children.filter(
      ({ half, value }) => half > finest && value - steepness * half * Math.SQRT2 < best.value,
    );
    if (squares.length > MOST_SQUARES) {
      squares = squares.sort((one, other) => one.value - other.value).slice(0, MOST_SQUARES);
    }
  }
  return best;
}

const QUARTERS: readonly PointPx[] = [
  [-1, -1],
  [1, -1],
  [-1, 1],
  [1, 1],
];
