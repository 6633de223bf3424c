import { median } from 'simple-statistics';
import { COLLAR_STEPS } from './collar-code.ts';
import { printedAt, type StripPlace } from './fit-turn.ts';
import { codeLevel, type Reading, TURN_STEP_DEG } from './match-code.ts';
import { angleAtColumn } from './pot-sight.ts';

/** What was read in the columns of the photo. */
export interface ColumnReading {
  readonly xPx: ArrayLike<number>;
  /** Difference of the rows ÷ the usual difference. */
  readonly values: ArrayLike<number>;
  /** Light of both rows. */
  readonly light: ArrayLike<number>;
}

/** What the single steps of the code say once its place is known. */
export interface StepCount {
  /** Steps that were read and are as printed. */
  readonly right: number;
  /** Steps that were read and are not. */
  readonly wrong: number;
  /** Steps in sight that show no difference: something hides them. */
  readonly hidden: number;
  /** How much the difference varies over the right steps: standard deviation ÷ mean. */
  readonly unevenness: number;
  /** How much the light of both rows changes from one right step to the next: median of the logarithm. */
  readonly flicker: number;
}

interface Step {
  count: number;
  value: number;
  light: number;
  readonly level: number;
}

const STEP_DEG = 360 / COLLAR_STEPS;
/** Share of a step, about its middle, that is read. */
const INNER = 0.7;
/** A step that differs by less, of the usual difference, is hidden. */
const LEAST_DIFFERENCE = 0.45;

/** Reads each step in sight by itself. */
export function countSteps(reading: ColumnReading, place: StripPlace, widestDeg: number): StepCount {
  const steps = stepsOf(reading, place, widestDeg);
  const right = [...steps].filter(([, { value, level }]) => value * level >= LEAST_DIFFERENCE);
  const wrong = [...steps].filter(([, { value, level }]) => value * level <= -LEAST_DIFFERENCE).length;
  const sizes = right.map(([, { value }]) => Math.abs(value));
  const changes = right.flatMap(([at, { light }]) => {
    const next = right.find(([other]) => other === (at + 1) % COLLAR_STEPS);
    return next === undefined ? [] : [Math.abs(Math.log((light + 1e-4) / (next[1].light + 1e-4)))];
  });
  return {
    right: right.length,
    wrong,
    hidden: steps.size - right.length - wrong,
    unevenness: unevennessOf(sizes),
    flicker: changes.length === 0 ? Number.POSITIVE_INFINITY : median(changes),
  };
}

function stepsOf(reading: ColumnReading, place: StripPlace, widestDeg: number): Map<number, Step> {
  const steps = new Map<number, Step>();
  for (let k = 0; k < reading.xPx.length; k++) {
    const angle = angleAtColumn(reading.xPx[k] as number, place.sight);
    if (Math.abs(angle) > widestDeg) continue;
    const printed = printedAt(angle, place);
    const at = (printed + 180) / STEP_DEG;
    const number = Math.floor(at);
    if (Math.abs(at - number - 0.5) > INNER / 2) continue;
    const step = steps.get(number) ?? { count: 0, value: 0, light: 0, level: codeLevel(printed, 0) };
    step.count++;
    step.value += ((reading.values[k] as number) - step.value) / step.count;
    step.light += ((reading.light[k] as number) - step.light) / step.count;
    steps.set(number, step);
  }
  return steps;
}

function unevennessOf(sizes: readonly number[]): number {
  if (sizes.length < 2) return Number.POSITIVE_INFINITY;
  const mean = sizes.reduce((sum, size) => sum + size, 0) / sizes.length;
  return Math.sqrt(sizes.reduce((sum, size) => sum + (size - mean) ** 2, 0) / (sizes.length - 1)) / mean;
}

/** The same reading on even printed angles, `PER_STEP` a step. */
export function evenReading({ xPx, values }: ColumnReading, place: StripPlace, widestDeg: number): Reading {
  const middle = Math.floor((widestDeg * place.scale) / TURN_STEP_DEG);
  const sums = new Float32Array(2 * middle + 1);
  const weights = new Float32Array(2 * middle + 1);
  for (let k = 0; k < xPx.length; k++) {
    const angle = angleAtColumn(xPx[k] as number, place.sight);
    const at = middle + Math.round((angle * place.scale) / TURN_STEP_DEG);
    if (Math.abs(angle) > widestDeg || at < 0 || at > 2 * middle) continue;
    sums[at] = (sums[at] as number) + Math.max(-1, Math.min(1, values[k] as number));
    weights[at] = (weights[at] as number) + 1;
  }
  for (let at = 0; at < sums.length; at++) {
    if (weights[at] === 0) continue;
    sums[at] = (sums[at] as number) / (weights[at] as number);
    weights[at] = 1;
  }
  return { values: sums, weights };
}
