import { COLLAR_CODE, COLLAR_STEPS } from './collar-code.ts';

/** Where the code changes over: to bare above, or to dark above. */
export interface CodeEdge {
  /** Printed azimuth, −180 up to 180. */
  readonly azimuthDeg: number;
  /** 1: the upper row is bare to the right of it; −1: dark. */
  readonly way: 1 | -1;
}

/** Where a reading changes over. */
export interface SeenEdge {
  readonly xPx: number;
  readonly way: 1 | -1;
}

const STEP_DEG = 360 / COLLAR_STEPS;

/** All edges round the pot. */
export const CODE_EDGES: readonly CodeEdge[] = COLLAR_CODE.flatMap((step, k): CodeEdge[] => {
  const before = COLLAR_CODE[(k + COLLAR_STEPS - 1) % COLLAR_STEPS];
  return step === before ? [] : [{ azimuthDeg: -180 + k * STEP_DEG, way: step === 0 ? 1 : -1 }];
});

/** A reading this far from nothing is clearly one or the other. */
const CLEAR = 0.4;

/**
 * Finds where a reading along the columns changes from clearly one to clearly the other.
 *
 * @param values difference of the rows ÷ the usual difference
 * @param widestPx between the two clear columns: what is wider is something that hides the code
 * @returns from left to right, to a part of a column: where the straight line between neighbours is nothing
 *
 * Notes: at an edge the lens mixes paper into ink above and ink into paper below in the same measure, so the rows are alike where the edge is.
 */
export function seenEdges(
  xPx: ArrayLike<number>,
  values: ArrayLike<number>,
  widestPx: (xPx: number) => number,
): SeenEdge[] {
  const edges: SeenEdge[] = [];
  let clear = -1;
  for (let k = 0; k < values.length; k++) {
    const here = values[k] as number;
    if (Math.abs(here) < CLEAR) continue;
    if (clear >= 0 && here * (values[clear] as number) < 0) {
      const [left, right] = [xPx[clear] as number, xPx[k] as number];
      if (right - left <= widestPx((left + right) / 2)) {
        edges.push({ xPx: crossing(xPx, values, clear, k), way: here > 0 ? 1 : -1 });
      }
    }
    clear = k;
  }
  return edges;
}

/** Mean place of all changes of sign between two columns of opposite sign. */
function crossing(xPx: ArrayLike<number>, values: ArrayLike<number>, from: number, to: number): number {
  let [sum, count] = [0, 0];
  for (let k = from; k < to; k++) {
    const [here, next] = [values[k] as number, values[k + 1] as number];
    if (here * next > 0 || here === next) continue;
    const share = here / (here - next);
    sum += (xPx[k] as number) + share * ((xPx[k + 1] as number) - (xPx[k] as number));
    count++;
  }
  return sum / count;
}
