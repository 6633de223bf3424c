import { COLLAR_CODE, COLLAR_STEPS } from './collar-code.ts';

/** How the strip may lie before the camera: as it should, upside down, or seen in a mirror. */
export const LIES = ['upright', 'upside-down', 'mirrored'] as const;
export type Lie = (typeof LIES)[number];

/** Readings a step of the code. */
export const PER_STEP = 4;
const TURNS = COLLAR_STEPS * PER_STEP;
export const TURN_STEP_DEG = 360 / TURNS;

/** The code round the pot in quarter steps: 1 where the upper row is bare, −1 where it is dark, edges a quarter step wide. */
const PATTERNS: Readonly<Record<Lie, Float32Array>> = {
  upright: pattern((turn) => levelAt(turn)),
  'upside-down': pattern((turn) => -levelAt(-1 - turn)),
  mirrored: pattern((turn) => levelAt(-1 - turn)),
};

/** How well the code fits at one turn. */
export interface CodeMatch {
  readonly lie: Lie;
  /** Printed azimuth that faces the camera, degrees. */
  readonly turnDeg: number;
  /** Steps that agree minus steps that do not. */
  readonly agree: number;
}

/**
 * What was read along the pot, on even angles about the camera's direction, `PER_STEP` a printed step: difference of the rows ÷ the usual
 * difference, −1 to 1, and its weight.
 */
export interface Reading {
  readonly values: Float32Array;
  readonly weights: Float32Array;
}

/**
 * Agreement of a reading with the code at every turn, in steps.
 *
 * @returns one number a quarter step, printed azimuth −180 first
 */
export function agreements({ values, weights }: Reading, lie: Lie): Float32Array {
  const level = PATTERNS[lie];
  const middle = (values.length - 1) / 2;
  const sums = new Float32Array(TURNS);
  for (let turn = 0; turn < TURNS; turn++) {
    let sum = 0;
    const from = turn - middle + TURNS;
    for (let k = 0; k < values.length; k++) {
      sum += (values[k] as number) * (weights[k] as number) * (level[(from + k) % TURNS] as number);
    }
    sums[turn] = sum / PER_STEP;
  }
  return sums;
}

/** The turn that fits best. */
export function bestTurn(reading: Reading, lie: Lie): CodeMatch {
  const sums = agreements(reading, lie);
  let best = 0;
  for (let turn = 1; turn < TURNS; turn++) if ((sums[turn] as number) > (sums[best] as number)) best = turn;
  return { lie, turnDeg: azimuthOfTurn(best), agree: sums[best] as number };
}

/** The best agreement of any other turn or lie: what the reading could be mistaken for. */
export function nextBest(reading: Reading, turnDeg: number): number {
  let best = Number.NEGATIVE_INFINITY;
  for (const lie of LIES) {
    const sums = agreements(reading, lie);
    for (let turn = 0; turn < TURNS; turn++) {
      const apart = Math.abs(((azimuthOfTurn(turn) - turnDeg + 540) % 360) - 180);
      if (lie === 'upright' && apart < 1.5 * (360 / COLLAR_STEPS)) continue;
      best = Math.max(best, sums[turn] as number);
    }
  }
  return best;
}

/** 1 where the upper row is bare at a printed azimuth, −1 where it is dark; a straight slope of so many degrees at each edge. */
export function codeLevel(azimuthDeg: number, edgeDeg: number): number {
  const at = ((((azimuthDeg + 180) % 360) + 360) % 360) / (360 / COLLAR_STEPS);
  const step = Math.floor(at);
  const here = levelOfStep(step);
  const inStep = at - step;
  const half = edgeDeg / 2 / (360 / COLLAR_STEPS);
  const neighbour = levelOfStep(step + (inStep < 0.5 ? -1 : 1));
  const fromEdge = Math.min(inStep, 1 - inStep);
  if (neighbour === here || fromEdge >= half) return here;
  return here * (fromEdge / half);
}

function levelOfStep(step: number): number {
  return COLLAR_CODE[(step + COLLAR_STEPS) % COLLAR_STEPS] === 1 ? -1 : 1;
}

function azimuthOfTurn(turn: number): number {
  return -180 + (turn + 0.5) * TURN_STEP_DEG;
}

function pattern(at: (turn: number) => number): Float32Array {
  return Float32Array.from({ length: TURNS }, (_, turn) => at(turn));
}

function levelAt(turn: number): number {
  return codeLevel(azimuthOfTurn(((turn % TURNS) + TURNS) % TURNS), TURN_STEP_DEG);
}
