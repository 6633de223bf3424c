import { describe, expect, it } from 'vitest';
import { resamplePlane } from '../../../core/canopy/model/resample-plane.ts';

const plane = (data: readonly number[], width: number) => ({
  data: Float32Array.from(data),
  width,
  height: data.length / width,
  start: 0,
  step: 1,
  row: width,
});

describe('resampling a plane', () => {
  it('leaves a plane of the same size as it is', () => {
    const data = [1, 2, 3, 4, 5, 6];
    expect([...resamplePlane(plane(data, 3), 3, 2)]).toEqual(data.map((value) => expect.closeTo(value, 5)));
  });

  it('keeps one even colour even at any size', () => {
    for (const [width, height] of [
      [2, 9],
      [17, 3],
      [5, 5],
    ] as const) {
      for (const value of resamplePlane(plane(new Array(49).fill(7), 7), width, height)) {
        expect(value).toBeCloseTo(7, 5);
      }
    }
  });

  it('draws straight lines between pixel middles when it grows', () => {
    const grown = resamplePlane(plane([0, 4], 2), 4, 1);
    expect([...grown]).toEqual([0, 1, 3, 4].map((value) => expect.closeTo(value, 5)));
  });

  it('blends fine stripes to their mean when it shrinks', () => {
    const stripes = Array.from({ length: 64 }, (_, k) => (k % 2) * 10);
    const shrunk = resamplePlane(plane(stripes, 64), 8, 1);
    for (const value of shrunk.subarray(1, -1)) expect(value).toBeCloseTo(5, 1);
  });

  it('reads one colour of a part of an interleaved picture', () => {
    const data = Uint8Array.from({ length: 3 * 12 }, (_, k) => k);
    const red = { data, width: 2, height: 2, start: 3 * 5, step: 3, row: 3 * 4 };
    expect([...resamplePlane(red, 2, 2)]).toEqual([15, 18, 27, 30].map((value) => expect.closeTo(value, 4)));
  });
});
