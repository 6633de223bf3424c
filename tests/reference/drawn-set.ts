import type { Mask } from '../../core/raster/raster.ts';
import { drawMask } from '../core/drawn-shapes.ts';

/** Draws as the tables' author did: 200 × 200, a pixel is inside by its whole-number column and row. */
function drawn(inside: (x: number, y: number) => boolean): Mask {
  return drawMask(200, 200, (x, y) => inside(x - 0.5, y - 0.5));
}

const square = (x: number, y: number) => x >= 60 && x < 140 && y >= 60 && y < 140;
const turned = (x: number, y: number): [number, number] => {
  const [cos, sin] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
  return [(x - 100) * cos + (y - 100) * sin, -(x - 100) * sin + (y - 100) * cos];
};
const discOf = (cx: number, radius: number) => (x: number, y: number) =>
  (x - cx) ** 2 + (y - 100) ** 2 <= radius ** 2;

/** Nine shapes that were drawn once and measured with four other libraries; see the tests for which figure is whose. */
export const DRAWN = {
  disc50: drawn(discOf(100, 50)),
  ellipse80x40: drawn((x, y) => ((x - 100) / 80) ** 2 + ((y - 100) / 40) ** 2 <= 1),
  square80: drawn(square),
  L80: drawn((x, y) => square(x, y) && !(x >= 100 && y < 100)),
  square80_rot30: drawn((x, y) => turned(x, y).every((side) => Math.abs(side) <= 40)),
  ellipse80x40_rot30: drawn((x, y) => (turned(x, y)[0] / 80) ** 2 + (turned(x, y)[1] / 40) ** 2 <= 1),
  rose5: drawn(
    (x, y) => Math.hypot(x - 100, y - 100) <= 60 * (1 + 0.2 * Math.cos(5 * Math.atan2(y - 100, x - 100))),
  ),
  halfdisc60: drawn((x, y) => discOf(100, 60)(x, y) && x <= 100),
  disc_bite: drawn((x, y) => discOf(100, 60)(x, y) && !discOf(150, 30)(x, y)),
} as const;

export type DrawnName = keyof typeof DRAWN;
