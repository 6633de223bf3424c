import type { Mesh } from '../geometry/mesh.ts';
import { seededChance } from '../geometry/seeded-random.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { mixColours } from './growing.ts';

/** Which leaves of a plant have turned yellow, or brown along the margin. */
export interface AilingSpec {
  readonly seed: number;
  /** Share of the leaves that have turned yellow. */
  readonly yellowShare: number;
  /** 0: any leaf; 1: strictly the lowest ones. */
  readonly lowest: number;
  /** Share of the leaves whose margin is brown. */
  readonly brownShare: number;
  /** How far in the brown reaches, as a share of the blade's radius. */
  readonly brownEdge: number;
}

/** Linear reflectance of a leaf that has lost its green, and of dead margin. */
const YELLOW: Vec3 = [0.46, 0.345, 0.06];
export const BROWN: Vec3 = [0.14, 0.082, 0.038];
/** A leaf is yellow, in the truth, from this share of the way to `YELLOW`. */
const LEAST_TURNED = 0.65;

/**
 * Turns leaves of a built plant in place.
 *
 * A leaf's pattern then holds as its third number how far in its margin is brown, and as its fourth how yellow it is, 0 or
 * `LEAST_TURNED` to 1.
 */
export function ailLeaves(
  mesh: Mesh,
  { seed, yellowShare, lowest, brownShare, brownEdge }: AilingSpec,
): void {
  const chance = seededChance(seed);
  const leaves = mesh.parts.flatMap((part, index) => (part.material === 'leaf' ? [{ part, index }] : []));
  const heights = partHeights(mesh);
  const byHeight = [...leaves].sort((one, other) => (heights[one.index] ?? 0) - (heights[other.index] ?? 0));
  const turning = byHeight
    .map(({ part, index }, rank) => ({
      index,
      order: (lowest * rank) / leaves.length + (1 - lowest) * chance.uniform(1, part.seed),
    }))
    .sort((one, other) => one.order - other.order)
    .slice(0, Math.round(yellowShare * leaves.length));
  const turned = new Set(turning.map(({ index }) => index));
  for (const { part, index } of leaves) {
    const yellow = turned.has(index) ? chance.between(LEAST_TURNED, 1, 2, part.seed) : 0;
    const edge =
      chance.uniform(3, part.seed) < brownShare ? brownEdge * chance.between(0.6, 1.3, 4, part.seed) : 0;
    if (yellow === 0 && edge === 0) continue;
    const [zone = 0, grown = 1] = part.pattern;
    mesh.parts[index] = {
      ...part,
      colour: mixColours(part.colour, YELLOW, yellow),
      pattern: [zone * (1 - 0.7 * yellow), grown, edge, yellow],
    };
  }
}

/** Mean height of each part's corners. */
function partHeights({ parts, positions, corners, partOf }: Mesh): number[] {
  const sums = parts.map(() => 0);
  const counts = parts.map(() => 0);
  corners.forEach((corner, at) => {
    const part = partOf[Math.floor(at / 3)] as number;
    sums[part] = (sums[part] as number) + (positions[3 * corner + 2] as number);
    counts[part] = (counts[part] as number) + 1;
  });
  return sums.map((sum, part) => sum / Math.max(1, counts[part] as number));
}
