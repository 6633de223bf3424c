import { requireAtLeast } from '../errors/expect.ts';
import type { PointPx } from '../raster/raster.ts';
import type { Loop } from './outline.ts';

/**
 * Thins a closed outline to a number of points fit for drawing and storing.
 *
 * @param loop closed outline, px
 * @param mostPoints upper limit, at least 4
 * @returns a loop of at most `mostPoints` of the same points; the loop itself when it is short enough
 *
 * Notes: keeps the points that stand out most (tips, bays), so thin stems survive.
 *
 * Reference: Ramer (1972) and Douglas and Peucker (1973), with the tolerance raised until few enough points remain.
 *
 * Example: a square's outline of 400 points becomes its four corners at any limit below 400.
 */
export function reduceOutline(loop: Loop, mostPoints: number): Loop {
  requireAtLeast(mostPoints, 4, 'mostPoints');
  let reduced = loop;
  for (let tolerancePx = 0.25; reduced.length > mostPoints; tolerancePx *= 1.4) {
    reduced = simplify(loop, tolerancePx);
  }
  return reduced;
}

function simplify(loop: Loop, tolerancePx: number): Loop {
  // A closed line is cut at its first point and at the point farthest from it.
  const first = loop[0] as PointPx;
  let farthest = 0;
  let farthestPx = 0;
  loop.forEach((point, index) => {
    const awayPx = distance(point, first);
    if (awayPx > farthestPx) [farthest, farthestPx] = [index, awayPx];
  });
  const kept = new Uint8Array(loop.length + 1);
  kept[0] = 1;
  kept[farthest] = 1;
  const open: (readonly [number, number])[] = [
    [0, farthest],
    [farthest, loop.length],
  ];
  for (let stretch = open.pop(); stretch !== undefined; stretch = open.pop()) {
    const [from, to] = stretch;
    const a = loop[from] as PointPx;
    const b = loop[to % loop.length] as PointPx;
    let worst = -1;
    let worstPx = tolerancePx;
    for (let index = from + 1; index < to; index++) {
      const offPx = distanceToChord(loop[index] as PointPx, a, b);
      if (offPx <= worstPx) continue;
      worst = index;
      worstPx = offPx;
    }
    if (worst < 0) continue;
    kept[worst] = 1;
    open.push([from, worst], [worst, to]);
  }
  return loop.filter((_, index) => kept[index] === 1);
}

function distance(a: PointPx, b: PointPx): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/** Distance of a point from the stretch a–b, px. */
function distanceToChord(point: PointPx, a: PointPx, b: PointPx): number {
  const abX = b[0] - a[0];
  const abY = b[1] - a[1];
  const squared = abX * abX + abY * abY;
  if (squared === 0) return distance(point, a);
  const share = ((point[0] - a[0]) * abX + (point[1] - a[1]) * abY) / squared;
  const along = Math.max(0, Math.min(1, share));
  return Math.hypot(point[0] - (a[0] + along * abX), point[1] - (a[1] + along * abY));
}
