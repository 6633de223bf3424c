import { describe, expect, it } from 'vitest';
import { backdropDistance } from '../../../core/canopy/backdrop-distance.ts';
import { fitBackdrop } from '../../../core/canopy/backdrop-model.ts';
import { findTableLine } from '../../../core/canopy/table-line.ts';
import type { LabPicture } from '../../../core/raster/lab.ts';

function drawLab(at: (x: number, y: number) => readonly [number, number, number]): LabPicture {
  const [width, height] = [160, 120];
  const [l, a, b] = [0, 1, 2].map((channel) =>
    Float32Array.from(
      { length: width * height },
      (_, i) => at(i % width, Math.floor(i / width))[channel] as number,
    ),
  ) as [Float32Array, Float32Array, Float32Array];
  return { width, height, l, a, b };
}

const middle = 60 * 160 + 80;

describe('fitBackdrop', () => {
  it('predicts a light that falls off behind a thing in the middle', () => {
    const light = (x: number, y: number) => 80 - 0.05 * x - 0.0006 * y * y;
    const picture = drawLab((x, y) =>
      Math.hypot(x - 80, y - 60) < 40 ? [35, -15, 20] : [light(x, y), 1, 4],
    );
    const { colour, plainShare, spread } = fitBackdrop(picture);
    expect(colour.l[middle]).toBeCloseTo(light(80, 60), 0);
    expect(colour.b[middle]).toBeCloseTo(4, 1);
    expect(plainShare).toBe(1);
    expect(spread).toBeLessThan(0.5);
  });

  it('is not bent by a leaf that covers a fifth of the border', () => {
    const picture = drawLab((x, y) => (x < 12 && y > 20 ? [35, -20, 25] : [90, 0, 2]));
    expect(fitBackdrop(picture).colour.l[middle]).toBeCloseTo(90, 0);
  });

  it('gives wall and table a colour each', () => {
    const picture = drawLab((_, y) => (y < 80 ? [45, 0, -35] : [70, 10, 30]));
    const { colour } = fitBackdrop(picture);
    expect(colour.b[60 * 160 + 80]).toBeCloseTo(-35, 0);
    expect(colour.b[100 * 160 + 80]).toBeCloseTo(30, 0);
  });

  it('calls a border of many colours busy', () => {
    const picture = drawLab((x, y) => {
      const patch = (Math.floor(x / 9) * 7 + Math.floor(y / 9) * 13) % 5;
      return [20 + 16 * patch, 12 * (patch - 2), 30 - 14 * patch];
    });
    expect(fitBackdrop(picture).plainShare).toBeLessThan(0.6);
  });
});

describe('findTableLine', () => {
  it('finds a line that falls to the right', () => {
    const picture = drawLab((x, y) => (y < 70 + 0.1 * x ? [80, 0, 0] : [40, 5, 15]));
    const line = findTableLine(picture);
    expect(line?.leftY).toBeCloseTo(70, -1);
    expect(line?.rightY).toBeCloseTo(86, -1);
  });

  it('finds none in an even wall', () => {
    expect(findTableLine(drawLab(() => [80, 0, 0]))).toBeNull();
  });
});

describe('backdropDistance', () => {
  const wall = drawLab(() => [80, 4, 20]);
  it('discounts a soft shadow, whose chroma falls with its lightness', () => {
    expect(
      backdropDistance(
        drawLab(() => [56, 2.8, 14]),
        wall,
      )[0],
    ).toBeLessThan(6);
  });
  it('does not discount a leaf as dark as that shadow', () => {
    expect(
      backdropDistance(
        drawLab(() => [56, -18, 25]),
        wall,
      )[0],
    ).toBeGreaterThan(20);
  });
  it('counts what is lighter than the backdrop in full', () => {
    expect(
      backdropDistance(
        drawLab(() => [92, 4, 20]),
        wall,
      )[0],
    ).toBeCloseTo(12, 1);
  });
});
