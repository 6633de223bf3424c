import { describe, expect, it } from 'vitest';
import type { Pot } from '../../../core/canopy/found-plant.ts';
import { measureFound } from '../../../core/measure-photo.ts';
import type { PhotoReport } from '../../../core/report.ts';
import type { StandReading } from '../../../core/stand/read-stand.ts';
import { disc, drawMask, foundPlant } from '../drawn-shapes.ts';

const SIZE = { widthPx: 1600, heightPx: 1200 };
const FOCAL_PX = 1300;
const RIM_MM = 130;
const NOTHING_TOLD: StandReading = {
  frame: null,
  isElsewhere: false,
  sheetScale: null,
  cameraDistanceMm: null,
  focalLengthPx: null,
  greys: null,
  notes: [],
};

interface Scene {
  /** Level distance from the lens to the axis, and the lens above the rim. */
  readonly levelMm: number;
  readonly lensMm: number;
  readonly ballMm: number;
  readonly ballAboveRimMm: number;
}

/** The report of a perfect ball above its pot, as a pinhole camera sees it that looks straight at the ball. */
function reportOf(scene: Scene, told: Partial<StandReading>): PhotoReport {
  const { levelMm, lensMm, ballMm, ballAboveRimMm } = scene;
  const down = lensMm - ballAboveRimMm;
  const wayMm = Math.hypot(levelMm, down);
  const [cos, sin] = [levelMm / wayMm, down / wayMm];
  /** Place of a point above the rim's middle, toward the camera and to the right of it, px. */
  const seen = (upMm: number, nearerMm: number, rightMm: number) => {
    const [out, drop] = [levelMm - nearerMm, lensMm - upMm];
    const depth = out * cos + drop * sin;
    return [800 + (FOCAL_PX * rightMm) / depth, 600 + (FOCAL_PX * (drop * cos - out * sin)) / depth] as const;
  };
  const round = Array.from({ length: 3600 }, (_, k) => {
    const turn = (k * Math.PI) / 1800;
    return seen(0, (RIM_MM / 2) * Math.sin(turn), (RIM_MM / 2) * Math.cos(turn));
  });
  const [xs, ys] = [round.map(([x]) => x), round.map(([, y]) => y)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const y = round[xs.indexOf(right)]?.[1] ?? 0;
  const pot: Pot = {
    rimLeftPx: [left, y],
    rimRightPx: [right, y],
    rim: {
      centrePx: [800, y],
      halfWidthPx: (right - left) / 2,
      halfHeightPx: (Math.max(...ys) - Math.min(...ys)) / 2,
      heightSeen: true,
    },
    rimDoubtPx: 0,
    rimTaper: 0,
  };
  const radiusPx = (FOCAL_PX * ballMm) / Math.sqrt(wayMm ** 2 - ballMm ** 2);
  const mask = drawMask(1600, 1200, (x, row) => row < y && disc([800, 600], radiusPx)(x, row));
  return measureFound(foundPlant(mask, pot), {
    name: 'drawn.jpg',
    ...SIZE,
    rasterWidthPx: 1600,
    rasterHeightPx: 1200,
    rimMm: RIM_MM,
    turnDeg: 0,
    stand: { ...NOTHING_TOLD, ...told },
    notes: [],
  }).report;
}

const SCENES: readonly Scene[] = [
  { levelMm: 800, lensMm: 230, ballMm: 120, ballAboveRimMm: 95 },
  { levelMm: 800, lensMm: 60, ballMm: 120, ballAboveRimMm: 95 },
  { levelMm: 1200, lensMm: 420, ballMm: 170, ballAboveRimMm: 140 },
  { levelMm: 3000, lensMm: 700, ballMm: 300, ballAboveRimMm: 240 },
];

describe('the size of a ball above a rim of known width', () => {
  it.each(SCENES)('is true with the camera at $levelMm mm and $lensMm mm above the rim', (scene) => {
    const off = (told: Partial<StandReading>) =>
      Math.abs((reportOf(scene, told).ball?.radiusMm ?? 0) / scene.ballMm - 1);
    expect(off({ cameraDistanceMm: scene.levelMm })).toBeLessThan(0.004);
    expect(off({ focalLengthPx: FOCAL_PX })).toBeLessThan(0.004);
  });

  it('reads large from near and above when nothing tells the camera’s distance', () => {
    const [near] = SCENES as [Scene];
    const radiusMm = reportOf(near, {}).ball?.radiusMm ?? 0;
    // 95 mm nearer along a sight that falls by 9.6°: 1.9 %; the ball’s own outline: 1.1 %; the rim’s: −0.3 %.
    expect(radiusMm / near.ballMm).toBeGreaterThan(1.02);
    expect(radiusMm / near.ballMm).toBeLessThan(1.035);
  });

  it('is the same by the sheet', () => {
    const [near] = SCENES as [Scene];
    const wayMm = Math.hypot(near.levelMm, near.lensMm - near.ballAboveRimMm);
    const sheetScale = { mmPerPx: wayMm / FOCAL_PX, doubt: 0.001 };
    const report = reportOf(near, { sheetScale, focalLengthPx: FOCAL_PX, cameraDistanceMm: near.levelMm });
    expect(report.scale?.from).toBe('sheet');
    expect(Math.abs((report.ball?.radiusMm ?? 0) / near.ballMm - 1)).toBeLessThan(0.003);
    // Sheet and rim agree, so nothing is said of a difference.
    expect(report.notes.join()).not.toContain('By the pot rim sizes would be');
  });
});
