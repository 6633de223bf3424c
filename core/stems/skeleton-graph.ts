import type { Mask, PointPx } from '../raster/raster.ts';

/** Where lines of a skeleton end or meet. */
export interface SkeletonNode {
  readonly kind: 'end' | 'joint';
  /** An end's pixel, or the middle of a joint's pixels. */
  readonly placePx: PointPx;
}

/** A line between two nodes, by their place in the list. */
export interface SkeletonBranch {
  readonly from: number;
  readonly to: number;
  /** Middles of its pixels in order, both nodes' places included. */
  readonly pathPx: readonly PointPx[];
}

export interface SkeletonGraph {
  readonly nodes: readonly SkeletonNode[];
  readonly branches: readonly SkeletonBranch[];
}

/**
 * Ends, joints and branches of a skeleton.
 *
 * @param skeleton lines one pixel wide (`skeletonOf`)
 * @returns graph in px; a ring without a joint is given one, a lone pixel is an end without a branch
 *
 * How: two pixels are linked when they share an edge, or a corner that no third pixel joins. Pixels with three and more links are joints; joints that
 * touch are one.
 *
 * Example: the skeleton of a T has three ends, one joint and three branches.
 */
export function skeletonGraph(skeleton: Mask): SkeletonGraph {
  const { width, data } = skeleton;
  const pixels = [...data.keys()].filter((at) => data[at] === 1);
  const links = new Map(pixels.map((at) => [at, linksOf(skeleton, at)]));
  const linked = (at: number) => links.get(at) as number[];
  const placeOf = (at: number): PointPx => [(at % width) + 0.5, Math.floor(at / width) + 0.5];

  const nodes: SkeletonNode[] = [];
  const nodeAt = new Map<number, number>();
  for (const at of pixels) {
    if (nodeAt.has(at) || linked(at).length === 2) continue;
    const cluster = linked(at).length > 2 ? jointFrom(at, linked, nodeAt) : [at];
    for (const one of cluster) nodeAt.set(one, nodes.length);
    const places = cluster.map(placeOf);
    const mean = (axis: 0 | 1) => places.reduce((sum, place) => sum + place[axis], 0) / places.length;
    nodes.push({
      kind: cluster.length > 1 || linked(at).length > 2 ? 'joint' : 'end',
      placePx: [mean(0), mean(1)],
    });
  }

  const branches: SkeletonBranch[] = [];
  const walked = new Set<number>();
  const walk = (start: number, first: number): void => {
    const path = [start];
    let [before, at] = [start, first];
    while (!nodeAt.has(at)) {
      walked.add(at);
      path.push(at);
      const next = linked(at).find((one) => one !== before) as number;
      [before, at] = [at, next];
    }
    path.push(at);
    const [from, to] = [nodeAt.get(start) as number, nodeAt.get(at) as number];
    const inner = path.slice(1, -1).map(placeOf);
    const ends = [nodes[from] as SkeletonNode, nodes[to] as SkeletonNode];
    const pathPx = [(ends[0] as SkeletonNode).placePx, ...inner, (ends[1] as SkeletonNode).placePx];
    branches.push({ from, to, pathPx });
  };
  const walkFrom = (start: number): void => {
    for (const first of linked(start)) {
      const direct = nodeAt.get(first);
      // Nodes side by side share a branch without pixels of its own, told once; inside a joint there is none.
      if (direct === undefined ? !walked.has(first) : direct > (nodeAt.get(start) as number))
        walk(start, first);
    }
  };
  for (const start of [...nodeAt.keys()]) walkFrom(start);
  for (const at of pixels) {
    if (nodeAt.has(at) || walked.has(at)) continue;
    nodeAt.set(at, nodes.length);
    nodes.push({ kind: 'joint', placePx: placeOf(at) });
    walkFrom(at);
  }
  return { nodes, branches };
}

/** The pixels of a joint: all with three and more links that touch one another. */
function jointFrom(start: number, linked: (at: number) => number[], taken: Map<number, number>): number[] {
  const cluster = [start];
  const known = new Set(cluster);
  for (const at of cluster) {
    for (const next of linked(at)) {
      if (known.has(next) || taken.has(next) || linked(next).length < 3) continue;
      known.add(next);
      cluster.push(next);
    }
  }
  return cluster;
}

function linksOf({ width, height, data }: Mask, at: number): number[] {
  const [x, y] = [at % width, Math.floor(at / width)];
  const stands = (dx: number, dy: number) =>
    x + dx >= 0 && x + dx < width && y + dy >= 0 && y + dy < height && data[at + dy * width + dx] === 1;
  const links: number[] = [];
  for (let dy = -1; dy <= 1; dy++) {
    for (let dx = -1; dx <= 1; dx++) {
      if ((dx === 0 && dy === 0) || !stands(dx, dy)) continue;
      if (dx !== 0 && dy !== 0 && (stands(dx, 0) || stands(0, dy))) continue;
      links.push(at + dy * width + dx);
    }
  }
  return links;
}
