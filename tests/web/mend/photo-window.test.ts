import { describe, expect, it } from 'vitest';
import {
  intoPhoto,
  panned,
  photoPointAt,
  pinched,
  showing,
  windowAround,
  zoomed,
} from '../../../web/src/mend/photo-window.ts';
import type { Point } from '../../../web/src/photo/points.ts';

const PHOTO = { x: 0, y: 0, width: 1600, height: 1200 };
const STAGE = { width: 400, height: 400 };

describe('a place on the stage', () => {
  it('is the place in the photo under it', () => {
    const window = { x: 200, y: 100, width: 800, height: 800 };
    expect(photoPointAt([0, 0], window, STAGE)).toEqual([200, 100]);
    expect(photoPointAt([400, 400], window, STAGE)).toEqual([1000, 900]);
    expect(photoPointAt([100, 50], window, STAGE)).toEqual([400, 200]);
  });

  it('beside the photo is taken as the photo’s edge', () => {
    expect(intoPhoto([-20, 1300], PHOTO)).toEqual([0, 1200]);
  });
});

describe('the window on the photo', () => {
  it('shows the whole of what was asked for in the stage’s aspect', () => {
    expect(windowAround(PHOTO, STAGE)).toEqual({ x: 0, y: -200, width: 1600, height: 1600 });
    expect(windowAround({ x: 0, y: 0, width: 100, height: 400 }, { width: 400, height: 200 })).toEqual({
      x: -350,
      y: 0,
      width: 800,
      height: 400,
    });
  });

  it('keeps the place it looks closer at where it is on the stage', () => {
    const before = { x: 200, y: 100, width: 800, height: 800 };
    const at: Point = [120, 300];
    const spot = photoPointAt(at, before, STAGE);
    const after = zoomed(before, 2, spot, PHOTO, STAGE);
    expect(after.width).toBe(400);
    expect(photoPointAt(at, after, STAGE)).toEqual(spot);
  });

  it('goes no wider than the photo and no closer than ten px a photo px', () => {
    const whole = windowAround(PHOTO, STAGE);
    expect(zoomed(whole, 0.5, [0, 0], PHOTO, STAGE)).toEqual(whole);
    expect(zoomed(whole, 1e6, [800, 600], PHOTO, STAGE).width).toBe(40);
  });

  it('follows the finger and stops at the photo’s edge', () => {
    const window = { x: 200, y: 100, width: 800, height: 800 };
    expect(panned(window, [50, -25], PHOTO, STAGE)).toMatchObject({ x: 100, y: 150 });
    expect(panned(window, [4000, 0], PHOTO, STAGE)).toMatchObject({ x: 0 });
  });

  it('keeps the photo under both fingers of a pinch', () => {
    const window = { x: 400, y: 200, width: 800, height: 800 };
    const from = [
      [150, 200],
      [250, 200],
    ] as const;
    const to = [
      [130, 210],
      [290, 210],
    ] as const;
    const after = pinched(window, from, to, PHOTO, STAGE);
    for (const finger of [0, 1] as const) {
      const [x, y] = photoPointAt(from[finger], window, STAGE);
      const [nowX, nowY] = photoPointAt(to[finger], after, STAGE);
      expect(nowX).toBeCloseTo(x, 6);
      expect(nowY).toBeCloseTo(y, 6);
    }
  });

  it('slides along when the crosshair comes to its edge', () => {
    const window = { x: 400, y: 200, width: 400, height: 400 };
    expect(showing(window, [600, 400], PHOTO, 0.15)).toEqual(window);
    expect(showing(window, [900, 400], PHOTO, 0.15)).toMatchObject({ x: 560, y: 200 });
  });
});
