import { expectation, requireAtLeast, requireFinite } from '../errors/expect.ts';
import {
  inverseOfSquare,
  type OrthogonalTriangle,
  orthogonalTriangle,
  solveTriangle,
} from './orthogonal-triangle.ts';

/** Residuals at given parameters: always as many; NaN or infinite where the model cannot be computed. */
export type Residuals = (parameters: readonly number[]) => readonly number[];

export interface NonlinearFit {
  readonly parameters: readonly number[];
  /**
   * (JᵀJ)⁻¹: the parameters' covariance where residuals are in standard deviations, else to be taken times `residualSd`². `null` when
   * the residuals do not fix all parameters.
   */
  readonly unitCovariance: readonly (readonly number[])[] | null;
  readonly sumOfSquares: number;
  /** √(sum of squares ÷ degrees of freedom), in the residuals' unit; `null` when nothing is left over to tell it from. */
  readonly residualSd: number | null;
  /** Whether the search came to rest; `false` when it ran out of rounds. */
  readonly converged: boolean;
}

const MOST_ROUNDS = 1000;
/** How far the first step may go, in sizes of the start. */
const FIRST_REACH = 1;
/** A step this small, share of each parameter, ends the search. */
const FINEST = 1e-11;
/** Near the end the sum is flat to rounding while a step still gains digits, hence the hair's breadth. */
const FLAT = 1e-12;
/** A step that promises to lower the sum by this share only ends the search. */
const RESTING = 1e-20;
/** Of a five-point difference, share of the parameter: rounding then spoils the slopes in the twelfth digit only. */
const DIFFERENCE = 1e-4;

/**
 * Parameters that make the sum of squared residuals least (Levenberg–Marquardt).
 *
 * @param residuals from parameters to residuals, smooth near the fit
 * @param start parameters to begin with; one that is 0 is taken to be of size 1
 * @returns parameters, their covariance, what is left over, and whether the search came to rest
 *
 * How: Gauss–Newton steps that may go only so far: the reach grows while the sum falls as foreseen and shrinks while it does not. A
 * length is told in each parameter's steepest column so far, so that units do not matter. Slopes are five-point
 * differences; steps are solved by reflections (QR), never by normal equations.
 *
 * Notes: finds the nearest valley, which need not be the deepest. Reaches the certified values of the 27 NIST reference sets to
 * 8 digits and more from both starts; the library tried first (ml-levenberg-marquardt 5.1, the best of four settings) reached 6
 * digits in 19 of them from the far start, in 25 from the near one, takes one predictor only and gives no covariance.
 *
 * Reference: Levenberg (1944); Marquardt (1963); Moré (1978), The Levenberg–Marquardt algorithm: implementation and theory.
 *
 * Example: residuals a − 1, a − 2, a − 3 from a = 10 give a = 2, unit variance 1/3, residual sd 1.
 */
export function nonlinearLeastSquares(residuals: Residuals, start: readonly number[]): NonlinearFit {
  for (const value of start) requireFinite(value, 'start');
  let [parameters, rest] = [start, residuals(start)];
  requireAtLeast(rest.length, start.length, 'residuals');
  let sum = sumOfSquares(rest);
  if (!Number.isFinite(sum)) {
    throw new RangeError(expectation('a start with finite residuals', 'start', start.join(', ')));
  }

  let columns = slopes(residuals, parameters);
  let scale = columns.map((column) => length(column) || 1);
  let reach = FIRST_REACH * (scaledLength(start, scale) || 1);
  let converged = false;
  for (let round = 0; round < MOST_ROUNDS && !converged; round++) {
    const triangle = orthogonalTriangle(
      columns,
      rest.map((value) => -value),
    );
    const { step, isFree } = stepWithin(triangle, scale, reach);
    const went = scaledLength(step, scale);
    const tried = parameters.map((value, k) => value + (step[k] as number));
    const triedRest = residuals(tried);
    const triedSum = sumOfSquares(triedRest);
    const foreseen = foreseenGain(triangle, step);
    const gain = (sum - triedSum) / foreseen;
    // NaN counts as no gain.
    if (!(gain > 0.25)) reach = 0.4 * Math.min(reach, went);
    else if (gain > 0.75 || isFree) reach = Math.max(reach, 2 * went);
    const isFlat = foreseen <= FLAT * sum;
    converged =
      foreseen <= RESTING * sum ||
      step.every((by, k) => Math.abs(by) <= FINEST * Math.abs(tried[k] as number));
    if (triedSum < sum || (isFlat && triedSum <= sum * (1 + FLAT))) {
      [parameters, rest, sum] = [tried, triedRest, triedSum];
      columns = slopes(residuals, parameters);
      scale = columns.map((column, k) => Math.max(scale[k] as number, length(column)));
    }
  }
  const spare = rest.length - start.length;
  return {
    parameters,
    unitCovariance: inverseOfSquare(orthogonalTriangle(columns, rest)),
    sumOfSquares: sum,
    residualSd: spare > 0 ? Math.sqrt(sum / spare) : null,
    converged,
  };
}

/** The step that brings the sum lowest among those no longer than the reach. */
function stepWithin(triangle: OrthogonalTriangle, scale: readonly number[], reach: number) {
  const free = solveTriangle(triangle);
  if (free !== null && scaledLength(free, scale) <= reach) return { step: free, isFree: true };
  // The longer it is held back the shorter the step: halve the bracket of the damping's logarithm.
  let [low, high] = [-40, 40];
  let step = scale.map(() => 0);
  while (high - low > 0.05) {
    const middle = (low + high) / 2;
    const held = solveTriangle(heldBack(triangle, scale, Math.exp(middle)));
    if (held === null || scaledLength(held, scale) > reach) low = middle;
    else [high, step] = [middle, held];
  }
  return { step, isFree: false };
}

/** The triangle of |J·step + rest|² + (damping·|scale·step|)². */
function heldBack({ rows, right }: OrthogonalTriangle, scale: readonly number[], damping: number) {
  const columns = right.map((_, k) => [
    ...rows.map((row) => row[k] as number),
    ...scale.map((size, at) => (at === k ? damping * size : 0)),
  ]);
  return orthogonalTriangle(columns, [...right, ...right.map(() => 0)]);
}

/** How much the sum falls by a step if the residuals are straight lines. */
function foreseenGain({ rows, right }: OrthogonalTriangle, step: readonly number[]): number {
  let gain = 0;
  rows.forEach((row, k) => {
    const moved = row.reduce((sum, cell, at) => sum + cell * (step[at] as number), 0);
    gain += moved * (2 * (right[k] as number) - moved);
  });
  return gain;
}

/** Slopes of the residuals by five-point differences, one list for each parameter. */
function slopes(residuals: Residuals, parameters: readonly number[]): number[][] {
  return parameters.map((value, k) => {
    const by = DIFFERENCE * (Math.abs(value) || 1);
    const at = (steps: number) =>
      residuals(parameters.map((other, o) => (o === k ? value + steps * by : other)));
    const [lower, low, high, higher] = [at(-2), at(-1), at(1), at(2)];
    return high.map(
      (above, row) =>
        (8 * (above - (low[row] as number)) - ((higher[row] as number) - (lower[row] as number))) / (12 * by),
    );
  });
}

function sumOfSquares(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value * value, 0);
}

function length(values: readonly number[]): number {
  return Math.sqrt(sumOfSquares(values));
}

function scaledLength(step: readonly number[], scale: readonly number[]): number {
  return length(step.map((value, k) => value * (scale[k] as number)));
}
