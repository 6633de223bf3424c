import { seededNoise } from '../../../core/measures/seeded-noise.ts';
import type { Mask } from '../../../core/raster/raster.ts';
import { drawMask } from '../../core/drawn-shapes.ts';

const SIDE = 200;

interface Bar {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly width: number;
}

/** Bars with round ends. */
function bars(list: readonly Bar[]): Mask {
  return drawMask(SIDE, SIDE, (x, y) =>
    list.some(({ from: [ax, ay], to: [bx, by], width }) => {
      const [dx, dy] = [bx - ax, by - ay];
      const along = Math.min(1, Math.max(0, ((x - ax) * dx + (y - ay) * dy) / (dx * dx + dy * dy)));
      return Math.hypot(x - ax - along * dx, y - ay - along * dy) <= width / 2;
    }),
  );
}

function spoke(deg: number, length: number, width: number): Bar {
  const rad = (deg * Math.PI) / 180;
  return {
    from: [100.3, 100.6],
    to: [100.3 + length * Math.cos(rad), 100.6 + length * Math.sin(rad)],
    width,
  };
}

/** A fan of stems out of one foot, as a bare plant shows them; some cross. */
function fan(seed: number): Mask {
  const noise = seededNoise(seed);
  const count = 4 + (seed % 5);
  return bars(
    Array.from({ length: count }, (_, k): Bar[] => {
      const lean = -70 + (140 * (k + 0.5)) / count + 12 * noise.normal();
      const fork = 45 + 12 * noise.normal();
      const rad = ((lean / 2 - 90) * Math.PI) / 180;
      const bend = ((lean - 90) * Math.PI) / 180;
      const middle = [100 + fork * Math.cos(rad), 190 + fork * Math.sin(rad)] as const;
      const rest = 70 + 15 * noise.normal();
      const width = 4 + (k % 3);
      return [
        { from: [100, 190], to: middle, width: width + 2 },
        { from: middle, to: [middle[0] + rest * Math.cos(bend), middle[1] + rest * Math.sin(bend)], width },
      ];
    }).flat(),
  );
}

const arc = (from: number, to: number) =>
  drawMask(SIDE, SIDE, (x, y) => {
    const deg = (Math.atan2(y - 100, x - 100) * 180) / Math.PI;
    return Math.abs(Math.hypot(x - 100, y - 100) - 60) <= 4 && deg >= from && deg <= to;
  });

/** Thirty-six masks with skeletons of every sort: bars, joints, crossings, arcs, a ring, solids and fans of stems. */
export const SKELETON_MASKS: readonly { readonly name: string; readonly mask: Mask }[] = [
  ...[0, 10, 22.5, 30, 45, 67, 90].map((deg) => ({
    name: `bar at ${deg}`,
    mask: bars([{ ...spoke(deg, 75, 9), from: spoke(deg + 180, 75, 9).to }]),
  })),
  { name: 'thin bar', mask: bars([{ ...spoke(37, 80, 2.2), from: spoke(217, 80, 2.2).to }]) },
  { name: 'T', mask: bars([spoke(0, 70, 9), spoke(180, 70, 9), spoke(90, 70, 9)]) },
  { name: 'Y', mask: bars([spoke(90, 70, 8), spoke(-50, 70, 6), spoke(-130, 70, 6)]) },
  { name: 'cross', mask: bars([0, 90, 180, 270].map((deg) => spoke(deg, 75, 8))) },
  { name: 'slanted cross', mask: bars([25, 115, 205, 295].map((deg) => spoke(deg, 75, 8))) },
  { name: 'flat crossing', mask: bars([10, -14, 190, 166].map((deg) => spoke(deg, 80, 6))) },
  { name: 'star', mask: bars([15, 87, 159, 231, 303].map((deg) => spoke(deg, 75, 7))) },
  { name: 'L', mask: bars([spoke(0, 70, 9), spoke(90, 70, 9)]) },
  { name: 'arc', mask: arc(-140, 120) },
  { name: 'ring', mask: arc(-180, 180) },
  {
    name: 'ellipse',
    mask: drawMask(SIDE, SIDE, (x, y) => ((x - 100) / 80) ** 2 + ((y - 100) / 30) ** 2 <= 1),
  },
  {
    name: 'two pieces',
    mask: bars([
      { from: [20, 40], to: [170, 60], width: 8 },
      { from: [30, 150], to: [160, 120], width: 5 },
    ]),
  },
  {
    name: 'comb',
    mask: bars([
      { from: [20, 160], to: [180, 160], width: 8 },
      ...[40, 80, 120, 160].map((x): Bar => ({ from: [x, 160], to: [x + 5, 60], width: 5 })),
    ]),
  },
  ...Array.from({ length: 16 }, (_, k) => ({ name: `fan ${k}`, mask: fan(k + 1) })),
];
