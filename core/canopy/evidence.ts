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
