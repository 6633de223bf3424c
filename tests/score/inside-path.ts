/** A region's depth: distance in px from each pixel to the nearest outside, 0 outside. */
export interface DepthMap {
  readonly width: number;
  readonly height: number;
  readonly depthPx: Float32Array;
}

/** Costs are counted in tenths of a px, so that the queue can be a row of buckets. */
const TENTHS = 10;
/** A step along the region's rim costs as much as this many steps where it is deepest. */
const MOST_COST = 8;

/**
 * A path through the middle of one connected region between the two places furthest apart within it.
 *
 * From the deepest pixel the furthest is found, from there the furthest again: near enough the region's length. The two
 * are joined by the path on which a step costs the less the deeper it lies, so the path keeps to the region's ridge.
 *
 * @returns pixel indices from end to end; a single one for a region of one pixel, none for no region
 *
 * Reference: Dijkstra (1959), A note on two problems in connexion with graphs; with buckets as in Dial (1969),
 * Algorithm 360: shortest-path forest with topological ordering.
 */
export function pathInside(region: DepthMap): number[] {
  const { depthPx } = region;
  let deepest = 0;
  for (let i = 1; i < depthPx.length; i++) {
    if ((depthPx[i] as number) > (depthPx[deepest] as number)) deepest = i;
  }
  const most = depthPx[deepest] ?? 0;
  if (most === 0) return [];
  const evenly = () => 1;
  const start = spread(region, deepest, evenly).last;
  const end = spread(region, start, evenly).last;
  const { from } = spread(region, start, (i) => Math.min(MOST_COST, most / (depthPx[i] as number)));
  const path = [end];
  for (let i = end; i !== start; path.push(i)) i = from[i] as number;
  return path;
}

/** The cheapest ways from `start` to all of its region: each pixel's forerunner, and the pixel reached last. */
function spread({ width, height, depthPx }: DepthMap, start: number, costAt: (i: number) => number) {
  const cost = new Float64Array(depthPx.length).fill(Number.POSITIVE_INFINITY);
  const from = new Int32Array(depthPx.length).fill(-1);
  const buckets: (number[] | undefined)[] = [[start]];
  cost[start] = 0;
  let last = start;
  for (let spent = 0; spent < buckets.length; spent++) {
    for (const i of buckets[spent] ?? []) {
      if (cost[i] !== spent) continue;
      last = i;
      const [x, y] = [i % width, Math.floor(i / width)];
      for (let down = -1; down <= 1; down++) {
        for (let across = -1; across <= 1; across++) {
          if (x + across < 0 || x + across >= width || y + down < 0 || y + down >= height) continue;
          const next = i + down * width + across;
          if (next === i || depthPx[next] === 0) continue;
          const reached = spent + Math.round(TENTHS * Math.hypot(across, down) * costAt(next));
          if (reached >= (cost[next] as number)) continue;
          cost[next] = reached;
          from[next] = i;
          const bucket = buckets[reached] ?? [];
          buckets[reached] = bucket;
          bucket.push(next);
        }
      }
    }
    buckets[spent] = undefined;
  }
  return { from, last };
}
