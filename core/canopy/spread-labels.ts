import type { LabPicture } from '../raster/lab.ts';
import type { Evidence } from './evidence.ts';
import type { Drawn } from './paint-strokes.ts';

/** How far a stroke speaks: a broad one farther than a fine one. Costs of one stroke's width, where 1 is the whole reach. */
export const SPREAD = {
  /** Where the voices did not know, ... */
  unsure: 0.25,
  /** ... where they were sure otherwise, which a stroke seldom means beyond its own place, and sure alike. */
  against: 0.6,
  alike: 2,
  /** ΔE from px to px that costs the whole reach, whatever the width. */
  edgeDelta: 18,
};

/** Steps into which costs are sorted. */
const BUCKETS = 512;

/**
 * Spreads labels from drawn pixels to their surroundings by the cheapest way (Dijkstra 1959), as in geodesic matting:
 * cheap where colour changes little and the voices were unsure, dear across edges.
 *
 * @param drawn what was drawn, of the picture's size
 * @returns for every pixel the label that comes cheapest and what it cost, 0–1; label 0 and cost 1 out of reach
 *
 * Reference: Bai, Sapiro, Geodesic matting (IJCV 2009), for the idea; costs are our own.
 */
export function spreadLabels(
  picture: LabPicture,
  canopy: Evidence,
  drawn: Drawn,
): { labels: Int8Array; cost: Float32Array } {
  const { width, height } = picture;
  const labels = drawn.labels.slice();
  const widthPx = drawn.widthPx.slice();
  const cost = new Float32Array(labels.length).fill(1);
  const buckets: number[][] = Array.from({ length: BUCKETS }, () => []);
  for (let i = 0; i < labels.length; i++) {
    if (labels[i] === 0) continue;
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
          const agreement = label * (canopy.logOdds[j] as number);
          const total =
            spent + far * (edgeCost(picture, i, j) + voiceCost(agreement) / (widthPx[i] as number));
          if (total >= (cost[j] as number)) continue;
          cost[j] = total;
          labels[j] = label;
          widthPx[j] = widthPx[i] as number;
          buckets[Math.min(BUCKETS - 1, Math.floor(total * BUCKETS))]?.push(j);
        }
      }
    }
  }
  return { labels, cost };
}

function edgeCost({ l, a, b }: LabPicture, i: number, j: number): number {
  const dl = (l[i] as number) - (l[j] as number);
  const da = (a[i] as number) - (a[j] as number);
  const db = (b[i] as number) - (b[j] as number);
  return (dl * dl + da * da + db * db) / SPREAD.edgeDelta ** 2;
}

/** `agreement` is the voices' odds for the label. */
function voiceCost(agreement: number): number {
  const sureness = Math.min(1, Math.abs(agreement) / 3);
  return SPREAD.unsure + sureness * (agreement > 0 ? SPREAD.alike : SPREAD.against);
}
