import type { PointPx } from '../../raster/raster.ts';
import { type EdgeFit, fitEdge } from './edge-on-rays.ts';
import { type Ellipse, ellipseAxes } from './ellipse-of-outline.ts';
import type { Plane } from './light-plane.ts';
import { isDarkAt, RING_EDGES, type RingKind } from './ring-kinds.ts';
import { ringLikeness } from './ring-likeness.ts';
import type { RingEdge, RingMark } from './ring-mark.ts';
import { meanRay, RAYS, type RingFrame, type RingRays, sampleRays, unitPx } from './ring-rays.ts';

/** What a fitted mark must show; looser for nothing, so that leaves and flowers do not pass. */
const LEAST = { likeness: 0.88, seen: 0.7, contrast: 0.12, outerRadiusPx: 6 };
/** A ray's edge may stray from the ellipse by this much, ring units, and by that much, px, whichever is more. */
const MOST_STRAY = { units: 0.09, px: 0.35 };

const ROUNDS = 6;

/** A centre is never surer than this, px: what the sampling itself leaves. */
const LEAST_DOUBT_PX = 0.02;

/** How much the outer edge's centre may stand off the mark's own, as a share of its radius (one standard deviation). */
const PERSPECTIVE_SHARE = 0.012;

export interface FittedMark {
  readonly mark: RingMark;
  readonly likeness: number;
}

/**
 * Fits one kind of mark about a seed.
 *
 * @param seed the ellipse of the mark's outermost edge, px, near enough to lie within half a ring
 * @returns `null` when the picture there is no such mark
 */
export function fitRingMark(plane: Plane, seed: Ellipse, kind: RingKind): FittedMark | null {
  const edges = RING_EDGES[kind];
  const outer = edges.at(-1) as number;
  const [xx, xy, yy] = seed.shape;
  let frame: RingFrame = {
    centrePx: seed.centrePx,
    unitsToPx: [xx / outer, xy / outer, xy / outer, yy / outer],
  };
  if (firstLikeness(plane, frame, kind) < 0.5) return null;

  let fits: EdgeFit[] = [];
  let rays: RingRays | null = null;
  for (let round = 0; round < ROUNDS; round++) {
    if (!staysInside(frame, outer, plane)) return null;
    rays = sampleRays(plane, frame, outer);
    const seen: EdgeFit[] = [];
    for (const edge of edges) {
      const fit = fitEdge(rays, edge, isDarkAt(kind, edge - 0.5));
      if (fit === null) return null;
      seen.push(fit);
    }
    fits = seen;
    if (round < ROUNDS - 1) frame = moved(frame, edges, fits);
  }
  if (rays === null) return null;
  const likeness = ringLikeness(meanRay(rays), rays.perUnit, kind);
  if (!passes(fits, frame, outer, likeness)) return null;
  return { mark: markOf(kind, frame, fits), likeness };
}

function firstLikeness(plane: Plane, frame: RingFrame, kind: RingKind): number {
  const outer = RING_EDGES[kind].at(-1) as number;
  if (!staysInside(frame, outer, plane)) return -1;
  const rays = sampleRays(plane, frame, outer);
  return ringLikeness(meanRay(rays), rays.perUnit, kind);
}

function passes(fits: readonly EdgeFit[], frame: RingFrame, outer: number, likeness: number): boolean {
  const unit = unitPx(frame);
  const mostStray = Math.max(MOST_STRAY.units, MOST_STRAY.px / unit);
  return (
    likeness >= LEAST.likeness &&
    unit * outer >= LEAST.outerRadiusPx &&
    fits.every((fit) => fit.seen >= LEAST.seen && fit.stray <= mostStray) &&
    (fits.at(-1) as EdgeFit).contrast >= LEAST.contrast
  );
}

function staysInside(
  { centrePx: [x, y], unitsToPx: [a, b, c, d] }: RingFrame,
  outer: number,
  plane: Plane,
): boolean {
  const [reachX, reachY] = [outer * Math.hypot(a, b), outer * Math.hypot(c, d)];
  return x - reachX > 0 && y - reachY > 0 && x + reachX < plane.width && y + reachY < plane.height;
}

/** The frame moved onto what the edges showed: centre and oblongness by all edges, size by their mean growth. */
function moved(frame: RingFrame, edges: readonly number[], fits: readonly EdgeFit[]): RingFrame {
  const [a, b, c, d] = frame.unitsToPx;
  const right = mean(fits.map((fit) => fit.shift[0]));
  const down = mean(fits.map((fit) => fit.shift[1]));
  const byUnit = (value: (fit: EdgeFit) => number) =>
    mean(fits.map((fit, k) => value(fit) / (edges[k] as number)));
  const growth = byUnit((fit) => fit.growth);
  const along = byUnit((fit) => fit.oblong[0]);
  const slanting = byUnit((fit) => fit.oblong[1]);
  const [p, q, r] = [1 + growth + along, slanting, 1 + growth - along];
  return {
    centrePx: [frame.centrePx[0] + a * right + b * down, frame.centrePx[1] + c * right + d * down],
    unitsToPx: [a * p + b * q, a * q + b * r, c * p + d * q, c * q + d * r],
  };
}

function markOf(kind: RingKind, frame: RingFrame, fits: readonly EdgeFit[]): RingMark {
  const [a, b, c, d] = frame.unitsToPx;
  const unit = unitPx(frame);
  const outer = RING_EDGES[kind].at(-1) as number;
  const edges = RING_EDGES[kind].map((units, k): RingEdge => {
    const { shift, stray, seen } = fits[k] as EdgeFit;
    // Rays nearer to each other than about a px see the same noise.
    const independent = Math.min(RAYS, (2 * Math.PI * units * unit) / 1.5) * seen;
    return {
      units,
      centrePx: [
        frame.centrePx[0] + a * shift[0] + b * shift[1],
        frame.centrePx[1] + c * shift[0] + d * shift[1],
      ],
      doubtPx: Math.hypot(stray * unit * Math.sqrt(2 / independent), LEAST_DOUBT_PX),
    };
  });
  const centre = centreOfEdges(edges, outer, unit);
  // The root of M Mᵀ has the ellipse's axes, whatever turn the frame has picked up.
  const axes = axesOfFrame(frame, outer);
  return {
    kind,
    centrePx: centre.centrePx,
    radiusPx: axes.longer,
    halfAxesPx: [axes.longer, axes.shorter],
    axisTurnDeg: axes.turnDeg,
    doubtPx: centre.doubtPx,
    edges,
  };
}

/**
 * The mark's own middle from the centres of its edges: `centre(units) = middle + slope · units²`, with as much slope
 * expected as a tilted sheet at arm's length shows, so that noise on nearly equal centres is not stretched.
 */
function centreOfEdges(
  edges: readonly RingEdge[],
  outer: number,
  unit: number,
): { centrePx: PointPx; doubtPx: number } {
  const prior = ((PERSPECTIVE_SHARE * outer * unit) / outer ** 2) ** -2;
  let [w, wq, wqq] = [0, 0, prior];
  const sums = { x: [0, 0], y: [0, 0] };
  for (const { units, centrePx, doubtPx } of edges) {
    const [weight, square] = [doubtPx ** -2, units ** 2];
    w += weight;
    wq += weight * square;
    wqq += weight * square ** 2;
    sums.x = [
      (sums.x[0] as number) + weight * centrePx[0],
      (sums.x[1] as number) + weight * square * centrePx[0],
    ];
    sums.y = [
      (sums.y[0] as number) + weight * centrePx[1],
      (sums.y[1] as number) + weight * square * centrePx[1],
    ];
  }
  // The slope is about zero only relative to a middle, so sums are taken about the first edge's centre.
  const [x0, y0] = (edges[0] as RingEdge).centrePx;
  const determinant = w * wqq - wq * wq;
  const middle = ([sum = 0, squareSum = 0]: number[], from: number) =>
    from + (wqq * (sum - w * from) - wq * (squareSum - wq * from)) / determinant;
  return { centrePx: [middle(sums.x, x0), middle(sums.y, y0)], doubtPx: Math.sqrt(wqq / determinant) };
}

function axesOfFrame({ unitsToPx: [a, b, c, d] }: RingFrame, outer: number) {
  const { longer, shorter, turnDeg } = ellipseAxes([a * a + b * b, a * c + b * d, c * c + d * d]);
  return { longer: outer * Math.sqrt(longer), shorter: outer * Math.sqrt(Math.max(0, shorter)), turnDeg };
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
