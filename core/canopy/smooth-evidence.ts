import type { OpenCvDoor } from '../opencv/door.ts';
import { meanPlane } from '../opencv/pictures.ts';
import type { Evidence } from './evidence.ts';

/**
 * Adds what the neighbourhood says: the mean odds within a square of `2 * radiusPx + 1`, held to ±`most`.
 *
 * Needed where seeing nothing is no proof of nothing, as a green leaf before green leaves: a pixel that does not differ
 * among many that do is more likely plant than a gap. Along a straight edge both sides cancel out.
 */
export function withNeighbours(
  door: OpenCvDoor,
  evidence: Evidence,
  radiusPx: number,
  most: number,
): Evidence {
  const heldIn = evidence.logOdds.map((odds) => Math.max(-most, Math.min(most, odds)));
  const mean = meanPlane(door, heldIn, evidence, radiusPx);
  return { ...evidence, logOdds: evidence.logOdds.map((odds, i) => odds + (mean[i] as number)) };
}
