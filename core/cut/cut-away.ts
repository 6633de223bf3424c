import { SHOOT_UPR, smoothProfile } from '../measures/gaussian-profile-filter.ts';
import type { Mask, PointPx } from '../raster/raster.ts';
import { WHOLE_CIRCLE } from '../silhouette/open-arc.ts';
import type { Loop } from '../silhouette/outline.ts';
import { type RadialProfile, radialProfile } from '../silhouette/radial-profile.ts';

/** A stem to shorten as one picture shows it, px of the mask. */
export interface SeenCut {
  readonly id: string;
  readonly tipPx: PointPx;
  /** Outline of the ball that it is cut to: the stem goes down to here. */
  readonly ball: { readonly centrePx: PointPx; readonly radiusPx: number };
}

/** A mask without what the cuts take away. */
export interface CutAway {
  readonly mask: Mask;
  /** The cuts whose stem this picture shows outside the ball, whether chosen or not. */
  readonly shown: ReadonlySet<string>;
}

/** What counts as a stem's lobe; lengths as shares of the ball's radius. Chosen on rendered plants that no figure is reported on. */
export const LOBE = {
  /** Between two leaves of one stem the outline may come down to the ball so far, rad. */
  gapRad: Math.PI / 30,
  /** Past a valley so deep rises what is another stem's. */
  valley: 0.08,
  /** A stem's leaves reach so far to the sides of its line. */
  beside: 0.42,
  /** A tip that stands out by less is hidden in this picture. */
  leastShown: 0.02,
  /** What stands so much further out than the stem's tip is another stem. */
  beyondTip: 0.25,
  /** The leaves just below a cut stay as they are, and reach so far beyond it. */
  leavesLeft: 0.06,
} as const;

/**
 * The silhouette as it would be after some cuts: the lobe of each stem outside the ball that it is cut to is gone, but for the leaves just below the cut.
 *
 * @param mask canopy, px
 * @param loops its outlines, px
 * @param cuts every stem of the list that this picture may show
 * @param chosen names of those that are cut
 *
 * How: from the direction of the tip the lobe reaches to both sides to where the outline comes down to the ball and stays there, or as far as a stem's leaves
 * reach. Where the lobes of two stems of the list meet, each has what is nearer to its own tip.
 *
 * Notes: inside the ball's outline nothing goes, because other leaves lie before or behind. A stem that points to or from the camera loses only what it
 * shows outside. What stands beside or beyond a stem and is no part of it stays.
 *
 * Example: a disc of radius 100 with a bar to 140 at the top, cut to the disc, keeps the bar to 106.
 */
export function cutAway(
  mask: Mask,
  loops: readonly Loop[],
  cuts: readonly SeenCut[],
  chosen: ReadonlySet<string>,
): CutAway {
  const lobes = cuts.flatMap((cut) => lobeOf(cut, loops));
  const data = Uint8Array.from(mask.data);
  for (const lobe of lobes) {
    if (!chosen.has(lobe.cut.id)) continue;
    clear({ ...mask, data }, lobe, lobes);
  }
  return { mask: { ...mask, data }, shown: new Set(lobes.map(({ cut }) => cut.id)) };
}

/** A stem's lobe: directions about its ball's centre, rad, clockwise on screen, and how far out it ends. */
interface Lobe {
  readonly cut: SeenCut;
  readonly tipRad: number;
  /** From the tip's direction to both ends. */
  readonly beforeRad: number;
  readonly afterRad: number;
  readonly outerPx: number;
}

function lobeOf(cut: SeenCut, loops: readonly Loop[]): Lobe[] {
  const { centrePx, radiusPx } = cut.ball;
  const [dx, dy] = [cut.tipPx[0] - centrePx[0], cut.tipPx[1] - centrePx[1]];
  const out = Math.hypot(dx, dy);
  if (out < (1 + LOBE.leastShown) * radiusPx) return [];
  const profile = radialProfile(loops, centrePx, WHOLE_CIRCLE);
  const shoots = smoothProfile(profile, SHOOT_UPR);
  const tipRad = Math.atan2(dy, dx);
  const at = Math.round(tipRad / profile.stepRad);
  const reach = (side: -1 | 1) => side * profile.stepRad * lobeSteps(shoots, at, side, radiusPx);
  const [beforeRad, afterRad] = [reach(-1), reach(1)];
  return [{ cut, tipRad, beforeRad, afterRad, outerPx: out + LOBE.beyondTip * radiusPx }];
}

/** Directions from the tip to one end of its lobe: where the outline comes down to the ball and stays there. */
function lobeSteps({ radiiPx, stepRad }: RadialProfile, at: number, side: -1 | 1, radiusPx: number): number {
  const count = radiiPx.length;
  const most = Math.floor(Math.asin(LOBE.beside) / stepRad);
  const gap = Math.round(LOBE.gapRad / stepRad);
  let [last, lowest] = [0, Number.POSITIVE_INFINITY];
  for (let step = 1; step <= most && step - last <= gap; step++) {
    const radius = Math.max(radiusPx, radiiPx[(((at + side * step) % count) + count) % count] as number);
    lowest = Math.min(lowest, radius);
    if (radius > lowest + LOBE.valley * radiusPx) break;
    if (radius > radiusPx) last = step;
  }
  return last + 1;
}

function clear(
  { width, height, data }: Mask & { readonly data: Uint8Array },
  lobe: Lobe,
  all: readonly Lobe[],
) {
  const [cx, cy] = lobe.cut.ball.centrePx;
  const { radiusPx } = lobe.cut.ball;
  const { outerPx } = lobe;
  const innerPx = (1 + LOBE.leavesLeft) * radiusPx;
  const [top, bottom] = [Math.max(0, Math.floor(cy - outerPx)), Math.min(height, Math.ceil(cy + outerPx))];
  const [left, right] = [Math.max(0, Math.floor(cx - outerPx)), Math.min(width, Math.ceil(cx + outerPx))];
  const others = all.filter((other) => other !== lobe);
  for (let y = top; y < bottom; y++) {
    for (let x = left; x < right; x++) {
      if (data[y * width + x] === 0) continue;
      const [dx, dy] = [x + 0.5 - cx, y + 0.5 - cy];
      const square = dx * dx + dy * dy;
      if (square <= innerPx * innerPx || square > outerPx * outerPx) continue;
      const turn = turnFrom(lobe.tipRad, Math.atan2(dy, dx));
      if (turn < lobe.beforeRad || turn > lobe.afterRad) continue;
      if (Math.sqrt(square) * Math.abs(Math.sin(turn)) > LOBE.beside * radiusPx) continue;
      if (others.some((other) => nearer(other, lobe, x + 0.5, y + 0.5))) continue;
      data[y * width + x] = 0;
    }
  }
}

/** Whether a place belongs to another stem's lobe, whose tip is nearer. */
function nearer(other: Lobe, lobe: Lobe, x: number, y: number): boolean {
  const [cx, cy] = other.cut.ball.centrePx;
  const turn = turnFrom(other.tipRad, Math.atan2(y - cy, x - cx));
  if (turn < other.beforeRad || turn > other.afterRad) return false;
  return apart(other.cut.tipPx, x, y) < apart(lobe.cut.tipPx, x, y);
}

function apart([tx, ty]: PointPx, x: number, y: number): number {
  return Math.hypot(tx - x, ty - y);
}

/** From one direction to another, −π to π. */
function turnFrom(fromRad: number, toRad: number): number {
  const turn = toRad - fromRad;
  return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
}
