import { describe, expect, it } from 'vitest';
import { searchCentre } from '../../../core/measures/circle-search.ts';
import type { PointPx } from '../../../core/raster/raster.ts';

/** Searches the square ±1 and counts how often it looks. */
function search(value: (centre: PointPx) => number, finest: number) {
  let looks = 0;
  const found = searchCentre({
    valueAt: (centre) => {
      looks++;
      return value(centre);
    },
    steepness: 1,
    middle: [0, 0],
    half: 1,
    start: { centre: [0, 0], value: value([0, 0]) },
    finest,
  });
  return { found, looks };
}

describe('the search for a centre', () => {
  it('ends within reach of the smallest value', () => {
    const { found } = search(([x, y]) => Math.hypot(x - 0.3, y + 0.4), 1e-6);
    expect(found.value).toBeLessThan(1e-6 * Math.SQRT2);
  });

  it('does not lose itself in a valley as flat as a short arc makes', () => {
    // A gutter along y: 2e7 squares of the finest size touch its bed.
    const { found, looks } = search(([x]) => Math.abs(x - 0.1234), 1e-7);
    expect(found.value).toBeLessThan(1e-6);
    expect(looks).toBeLessThan(24 * 4 * 4000);
  });
});
