import type { Mask, PointPx } from '../raster/raster.ts';
import { type SkeletonBranch, type SkeletonGraph, skeletonGraph } from './skeleton-graph.ts';

/** A spur's tip must stand out of the joint's own disc by this share of its radius, and by so many px, to be a stem. */
const LEAST_OUT = { share: 0.5, px: 2 } as const;
const MOST_ROUNDS = 12;

/**
 * The graph of a skeleton without its spurs: short branches that only point at a bump of the outline.
 *
 * @param skeleton px
 * @param depthAt distance from a place inside the mask to its border, px
 * @returns graph; a free end always keeps one branch
 *
 * How: round a joint lies a disc of its own depth; a branch whose tip with the tip's own disc hardly leaves it shows nothing that the disc
 * does not. The shortest spur of each joint goes first, then the graph is read anew, because a joint of two is none.
 *
 * Reference: the distance transform as measure of a spur: Shaked and Bruckstein (1998), Pruning medial axes, CVIU 69(2):156–169; the figures are our own.
 */
export function prunedGraph(skeleton: Mask, depthAt: (place: PointPx) => number): SkeletonGraph {
  const data = skeleton.data.slice();
  const thin = { ...skeleton, data };
  for (let round = 0; ; round++) {
    const graph = skeletonGraph(thin);
    const spurs = round === MOST_ROUNDS ? [] : shortestSpurs(graph, depthAt);
    if (spurs.length === 0) return graph;
    for (const { pathPx } of spurs) erase(thin, pathPx);
  }
}

/** At most one spur a joint. */
function shortestSpurs(
  { nodes, branches }: SkeletonGraph,
  depthAt: (place: PointPx) => number,
): SkeletonBranch[] {
  const shortest = new Map<number, { branch: SkeletonBranch; out: number }>();
  for (const branch of branches) {
    const [from, to] = [nodes[branch.from], nodes[branch.to]];
    if (from === undefined || to === undefined || from.kind === to.kind) continue;
    const [end, joint] = from.kind === 'end' ? [from, to] : [to, from];
    const jointDepth = depthAt(joint.placePx);
    const apart = Math.hypot(end.placePx[0] - joint.placePx[0], end.placePx[1] - joint.placePx[1]);
    const out = apart + depthAt(end.placePx) - jointDepth;
    if (out > LEAST_OUT.share * jointDepth + LEAST_OUT.px) continue;
    const place = from.kind === 'end' ? branch.to : branch.from;
    if (out < (shortest.get(place)?.out ?? Number.POSITIVE_INFINITY)) shortest.set(place, { branch, out });
  }
  return [...shortest.values()].map(({ branch }) => oriented(branch, nodes[branch.from]?.kind === 'end'));
}

/** From its end to its joint. */
function oriented(branch: SkeletonBranch, fromEnd: boolean): SkeletonBranch {
  return fromEnd ? branch : { from: branch.to, to: branch.from, pathPx: [...branch.pathPx].reverse() };
}

/** Takes away all but the joint. */
function erase({ width, data }: Mask, pathPx: readonly PointPx[]): void {
  for (const [x, y] of pathPx.slice(0, -1)) data[Math.floor(y) * width + Math.floor(x)] = 0;
}
