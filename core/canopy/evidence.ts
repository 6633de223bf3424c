import type { Mask } from '../raster/raster.ts';

/**
 * One source's opinion, pixel by pixel, as a logarithm of odds: above 0 for, below 0 against, 0 does not know.
 * Sources are joined by adding, so a new one (a trained network's first guess, last week's outline, a grower's
 * stroke) needs no change in the others.
 */
export interface Evidence {
  readonly width: number;
  readonly height: number;
  readonly logOdds: Float32Array;
}

/** No single source may be surer than this; a user's stroke may go beyond. */
export const MOST_SURE = 6;

/** The sum of several opinions of one size. */
export function joinEvidence(first: Evidence, ...others: readonly Evidence[]): Evidence {
  const logOdds = first.logOdds.slice();
  for (const other of others) {
    for (let i = 0; i < logOdds.length; i++) {
      logOdds[i] = (logOdds[i] as number) + (other.logOdds[i] as number);
    }
  }
  return { width: first.width, height: first.height, logOdds };
}

/** Straight line through 0 at `even`, one per `step`, held within ±`MOST_SURE`. */
export function logOddsOf(value: number, even: number, step: number): number {
  return Math.max(-MOST_SURE, Math.min(MOST_SURE, (value - even) / step));
}

/** Log odds that two independent things are both so: 1/P = (1 + e^-one)(1 + e^-other). */
export function both(one: Evidence, other: Evidence): Evidence {
  const logOdds = new Float32Array(one.logOdds.length);
  for (let i = 0; i < logOdds.length; i++) {
    const first = Math.exp(-(one.logOdds[i] as number));
    const second = Math.exp(-(other.logOdds[i] as number));
    logOdds[i] = -Math.log(first + second + first * second);
  }
  return { ...one, logOdds };
}

/** The opinion with a louder or softer voice, held within ±`most`. */
export function voiced(evidence: Evidence, weight: number, most = MOST_SURE): Evidence {
  const logOdds = new Float32Array(evidence.logOdds.length);
  for (let i = 0; i < logOdds.length; i++) {
    logOdds[i] = Math.max(-most, Math.min(most, weight * (evidence.logOdds[i] as number)));
  }
  return { ...evidence, logOdds };
}

/** Odds that a decision made on other grounds leaves where the voices said otherwise. */
const OVERRULED = 0.8;

/** The opinion brought to a decision: its sign is the mask's, and it is unsure where the voices said otherwise. */
export function agreed(evidence: Evidence, { data }: Mask): Evidence {
  const logOdds = new Float32Array(evidence.logOdds.length);
  for (let i = 0; i < logOdds.length; i++) {
    const odds = evidence.logOdds[i] as number;
    logOdds[i] = data[i] === 1 ? Math.max(OVERRULED, odds) : Math.min(-OVERRULED, odds);
  }
  return { ...evidence, logOdds };
}
