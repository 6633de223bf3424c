import type { LabPicture } from '../raster/lab.ts';
import type { Evidence } from './evidence.ts';

/** How far a stroke speaks. */
export const SPREAD = {
  /** Cost of each px, so that a stroke does not run on for ever: 1 / this is its farthest reach. */
  px: 0.006,
  /** ΔE from px to px that costs the whole reach. */
  edgeDelta: 18,
  /** Cost of each px of which the voices were sure otherwise, and sure alike. */
  against: 0.02,
  alike: 0.05,
};

/** Steps into which costs are sorted. */
const BUCKETS = 512;

/**
 * Spreads labels from drawn pixels to their surroundings by the cheapest way (Dijkstra 1959), as in geodesic matting:
 * cheap where colour changes little and the voices were unsure, dear across edges.
 *
 * @param drawn 1, -1, or 0 where nothing was drawn
 * @returns for every pixel the label that comes cheapest and what it cost, 0–1; label 0 and cost 1 out of reach
 *
 * Reference: Bai, Sapiro, Geodesic matting (IJCV 2009), for the idea; costs are our own.
 */
export function spreadLabels(
  picture: LabPicture,
  canopy: Evidence,
  drawn: Int8Array,
): { labels: Int8Array; cost: Float32Array } {
  const { width, height } = picture;
  const labels = drawn.slice();
  const cost = new Float32Array(drawn.length).fill(1);
  const buckets: number[][] = Array.from({ length: BUCKETS }, () => []);
  for (let i = 0; i < drawn.length; i++) {
    if (drawn[i] === 0) continue;
    cost[i] = 0;
    buckets[0]?.push(i);
  }
  for (const [at, bucket] of buckets.entries()) {
    // A bucket may grow while it is worked on.
    for (let k = 0; k < bucket.length; k++) {
      const i = bucket[k] as number;
      const spent = cost[i] as number;
      if (Math.floor(spent * BUCKETS) < at) continue;
      const label = labels[i] as number;
      const x = i % width;
      const y = (i - x) / width;
      for (let dy = -1; dy <= 1; dy++) {
        for (let dx = -1; dx <= 1; dx++) {
          const [nx, ny] = [x + dx, y + dy];
          if ((dx === 0 && dy === 0) || nx < 0 || ny < 0 || nx >= width || ny >= height) continue;
          const j = ny * width + nx;
          const far = dx !== 0 && dy !== 0 ? Math.SQRT2 : 1;
          const total = spent + far * stepCost(picture, i, j, label * (canopy.logOdds[j] as number));
          if (total >= (cost[j] as number)) continue;
          cost[j] = total;
          labels[j] = label;
          buckets[Math.min(BUCKETS - 1, Math.floor(total * BUCKETS))]?.push(j);
        }
      }
    }
  }
  return { labels, cost };
}

/** `agreement` is the voices' odds for the label at the pixel entered. */
function stepCost({ l, a, b }: LabPicture, i: number, j: number, agreement: number): number {
  const dl = (l[i] as number) - (l[j] as number);
  const da = (a[i] as number) - (a[j] as number);
  const db = (b[i] as number) - (b[j] as number);
  const edge = (dl * dl + da * da + db * db) / SPREAD.edgeDelta ** 2;
  const voices =
    agreement > 0 ? SPREAD.alike * Math.min(1, agreement / 3) : SPREAD.against * Math.min(1, -agreement / 3);
  return SPREAD.px + edge + voices;
}
