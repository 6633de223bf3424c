import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { paintStrokes } from '../../core/canopy/paint-strokes.ts';
import type { Stroke } from '../../core/canopy/stroke.ts';
import { openOpenCv } from '../../core/opencv/door.ts';
import type { Mask } from '../../core/raster/raster.ts';
import { pathInside } from './inside-path.ts';
import { nextStroke } from './simulated-hand.ts';

const [WIDTH, HEIGHT] = [160, 120];
type Inside = (x: number, y: number) => boolean;

const draw = (inside: Inside, width = WIDTH, height = HEIGHT): Mask => ({
  width,
  height,
  data: Uint8Array.from({ length: width * height }, (_, i) =>
    inside((i % width) + 0.5, Math.floor(i / width) + 0.5) ? 1 : 0,
  ),
});
const box =
  (left: number, top: number, right: number, bottom: number): Inside =>
  (x, y) =>
    x > left && x < right && y > top && y < bottom;
const either =
  (...shapes: readonly Inside[]): Inside =>
  (x, y) =>
    shapes.some((shape) => shape(x, y));

const PLANT = box(40, 30, 110, 90);
const door = await openOpenCv();

/** Share of what the brush covers that lies inside. */
function shareInside(stroke: Stroke, inside: Inside): number {
  const painted = paintStrokes([stroke], { width: WIDTH, height: HEIGHT }).labels;
  let [under, within] = [0, 0];
  for (let i = 0; i < painted.length; i++) {
    if (painted[i] === 0) continue;
    under++;
    if (inside((i % WIDTH) + 0.5, Math.floor(i / WIDTH) + 0.5)) within++;
  }
  return within / under;
}

describe('the simulated hand', () => {
  it('rests when all is right, and when only the outline is a pixel off', () => {
    expect(nextStroke(door, draw(PLANT), draw(PLANT))).toBeNull();
    expect(nextStroke(door, draw(box(39, 29, 111, 91)), draw(PLANT))).toBeNull();
  });

  it('takes away a bar from end to end, with a brush as wide as the bar', () => {
    const bar = box(110, 50, 150, 60);
    const stroke = nextStroke(door, draw(either(PLANT, bar)), draw(PLANT)) as Stroke;
    expect(stroke.kind).toBe('remove');
    expect(stroke.widthPx).toBeGreaterThan(7);
    expect(stroke.widthPx).toBeLessThanOrEqual(10);
    const across = stroke.pointsPx.map(([x]) => x);
    // The brush's round ends stay inside, half a brush from the bar's ends.
    expect(Math.min(...across)).toBeLessThan(110 + 8);
    expect(Math.max(...across)).toBeGreaterThan(150 - 8);
    expect(shareInside(stroke, bar)).toBeGreaterThan(0.98);
  });

  it('puts back a missing piece and stays inside it round a corner', () => {
    const corner = either(box(50, 40, 58, 80), box(50, 72, 100, 80));
    const found = draw((x, y) => PLANT(x, y) && !corner(x, y));
    const stroke = nextStroke(door, found, draw(PLANT)) as Stroke;
    expect(stroke.kind).toBe('keep');
    expect(shareInside(stroke, corner)).toBeGreaterThan(0.98);
    expect(stroke.pointsPx.some(([, y]) => y < 50)).toBe(true);
    expect(stroke.pointsPx.some(([x]) => x > 90)).toBe(true);
  });

  it('mends the larger of two regions first', () => {
    const [small, large] = [box(5, 5, 15, 15), box(50, 40, 90, 70)];
    const found = draw((x, y) => (PLANT(x, y) && !large(x, y)) || small(x, y));
    expect(nextStroke(door, found, draw(PLANT))?.kind).toBe('keep');
    const mended = draw(either(PLANT, small));
    expect(nextStroke(door, mended, draw(PLANT))?.kind).toBe('remove');
  });

  it('draws in px of the masks also where it looks at a reduced copy', () => {
    const [plant, bar] = [box(400, 300, 1000, 900), box(1000, 500, 1400, 580)];
    const wanted = draw(plant, 1600, 1200);
    const stroke = nextStroke(door, draw(either(plant, bar), 1600, 1200), wanted) as Stroke;
    expect(stroke.widthPx).toBeGreaterThan(60);
    expect(stroke.widthPx).toBeLessThanOrEqual(80);
    for (const [x, y] of stroke.pointsPx) expect(bar(x, y)).toBe(true);
  });

  it('never covers more right than wrong px, and gives the same stroke each time', () => {
    const place = fc.record({ x: fc.integer({ min: 4, max: 110 }), y: fc.integer({ min: 4, max: 80 }) });
    const side = fc.integer({ min: 5, max: 36 });
    fc.assert(
      fc.property(place, side, side, ({ x, y }, across, down) => {
        const patch = box(x, y, x + across, y + down);
        const [found, wanted] = [draw((u, v) => PLANT(u, v) !== patch(u, v)), draw(PLANT)];
        const stroke = nextStroke(door, found, wanted);
        if (stroke === null) return;
        expect(shareInside(stroke, patch)).toBeGreaterThan(0.9);
        expect(nextStroke(door, found, wanted)).toEqual(stroke);
      }),
      { numRuns: 40 },
    );
  });
});

describe('the path inside a region', () => {
  it('is empty for no region and a point for one pixel', () => {
    expect(pathInside({ width: 3, height: 3, depthPx: new Float32Array(9) })).toEqual([]);
    const depthPx = new Float32Array(9);
    depthPx[4] = 1;
    expect(pathInside({ width: 3, height: 3, depthPx })).toEqual([4]);
  });

  it('keeps to the ridge', () => {
    const rows = ['.......', '1111111', '1222221', '1111111', '.......'].join('');
    const depthPx = Float32Array.from(rows, (letter) => (letter === '.' ? 0 : Number(letter)));
    const path = pathInside({ width: 7, height: 5, depthPx });
    const middle = path.filter((i) => Math.floor(i / 7) === 2);
    expect(middle.length).toBeGreaterThanOrEqual(5);
    expect(new Set(path.map((i) => i % 7)).size).toBe(7);
  });
});
