import { describe, expect, it } from 'vitest';
import type { PointPx } from '../../../core/raster/raster.ts';
import { boundsInView, redrawMask } from '../../../core/stand/redraw-mask.ts';
import { maskInView } from '../../../core/turned/level-mask.ts';
import { elevationOfRing, levelView } from '../../../core/turned/level-view.ts';
import { seenAt } from '../../../core/turned/sight-lines.ts';
import { type CameraSpec, pinhole, project } from '../../../sample-images/render/view/camera.ts';

const [WIDTH, HEIGHT] = [1600, 1200];
/** Looks down by 8.5° and a little past the plant, held askew by 2°. */
const CAMERA: CameraSpec = { distanceMm: 1150, heightMm: 230, aimMm: [-40, 58], fieldMm: 700, rollDeg: 2 };
const ELEVATION_DEG = (Math.atan2(CAMERA.heightMm, CAMERA.distanceMm) * 180) / Math.PI;

/** The renderer's own camera: right, away from it, up, mm from the rim's middle. */
const eye = pinhole(CAMERA, WIDTH, HEIGHT);
const photo = (right: number, towards: number, up: number): PointPx => {
  const { xPx, yPx } = project(eye, [right, -towards, up]);
  return [xPx, yPx];
};

const CLUES = {
  widthPx: WIDTH,
  heightPx: HEIGHT,
  // The renderer's roll turns the camera; the picture turns the other way.
  rollDeg: rollOf(photo(-50, 0, 0), photo(50, 0, 0)),
  elevationDeg: ELEVATION_DEG,
  rimPx: photo(0, 0, 0),
};

function rollOf(left: PointPx, right: PointPx): number {
  return (Math.atan2(right[1] - left[1], right[0] - left[0]) * 180) / Math.PI;
}

describe('the level view', () => {
  it('shows every point where a level camera would, near or far', () => {
    const rollDeg = -CAMERA.rollDeg * (Math.sign(CLUES.rollDeg) === Math.sign(CAMERA.rollDeg) ? -1 : 1);
    const view = levelView({ ...CLUES, rollDeg, focalLengthPx: eye.focalPx });
    const level = { turnRad: 0, cos: 1, sin: 0, unitPerPx: 1, camera: CAMERA };
    for (const [right, towards, up] of [
      [120, 0, 90],
      [-150, 0, 160],
      [60, 110, 40],
      [-80, -140, 120],
      [0, 150, -20],
    ] as const) {
      const [x, y] = view.toUpright(photo(right, towards, up));
      const seen = seenAt(level, [towards, right, up]);
      const mmPerPx = CAMERA.distanceMm / eye.focalPx;
      expect(x * mmPerPx).toBeCloseTo(seen.x, 6);
      expect(-y * mmPerPx).toBeCloseTo(seen.y, 6);
    }
  });

  it('leads back to the photo', () => {
    const view = levelView({ ...CLUES, focalLengthPx: eye.focalPx });
    for (const point of [
      [100, 200],
      [800, 600],
      [1500, 90],
    ] as const) {
      const back = view.toRaster(view.toUpright(point));
      expect(back[0]).toBeCloseTo(point[0], 6);
      expect(back[1]).toBeCloseTo(point[1], 6);
    }
    expect(view.toUpright(CLUES.rimPx).map((px) => Math.round(1e6 * px) + 0)).toEqual([0, 0]);
  });

  it('reads how steeply a ring is looked down on from its ellipse', () => {
    expect(elevationOfRing({ halfWidthPx: 200, halfHeightPx: 0 })).toBe(0);
    expect(elevationOfRing({ halfWidthPx: 200, halfHeightPx: 100 })).toBeCloseTo(30, 9);
  });

  it('draws a mask as point by point', () => {
    const view = levelView({ ...CLUES, focalLengthPx: eye.focalPx });
    const data = new Uint8Array(60 * 40);
    for (let y = 0; y < 40; y++)
      for (let x = 0; x < 60; x++) if (Math.hypot(x - 30, y - 18) < 15 && x % 7 > 0) data[y * 60 + x] = 1;
    const mask = { left: 700, top: 300, width: 60, height: 40, data };
    const window = boundsInView(view, mask, mask.left, mask.top);
    const drawn = maskInView(mask, view.toPhoto, window);
    expect(drawn.data).toEqual(redrawMask(mask, view.toRaster, window).data);
    expect(drawn.data.reduce((sum, inside) => sum + inside, 0)).toBeGreaterThan(400);
  });
});
