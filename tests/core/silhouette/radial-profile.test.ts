import { describe, expect, it } from 'vitest';
import type { PointPx } from '../../../core/raster/raster.ts';
import { openArc, openArcDeg, WHOLE_CIRCLE } from '../../../core/silhouette/open-arc.ts';
import type { Loop } from '../../../core/silhouette/outline.ts';
import { profilePoints, radialProfile } from '../../../core/silhouette/radial-profile.ts';
import { rim } from '../drawn-shapes.ts';

const SQUARE: Loop = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
];

describe('the radial profile', () => {
  it('of a square is 1 to its sides and √2 to its corners', () => {
    const { radiiPx } = radialProfile([SQUARE], [0, 0], WHOLE_CIRCLE, 8);
    [1, Math.SQRT2, 1, Math.SQRT2, 1, Math.SQRT2, 1, Math.SQRT2].forEach((radius, index) => {
      expect(radiiPx[index]).toBeCloseTo(radius, 12);
    });
  });

  it('takes the outermost of several crossings', () => {
    const far: Loop = [
      [3, -1],
      [4, -1],
      [4, 1],
      [3, 1],
    ];
    const { radiiPx } = radialProfile([SQUARE, far], [0, 0], WHOLE_CIRCLE, 4);
    expect([...radiiPx].map((radius) => Math.round(radius))).toEqual([4, 1, 1, 1]);
  });

  it('is 0 where nothing lies', () => {
    const aside: Loop = SQUARE.map(([x, y]): PointPx => [x + 5, y]);
    expect(radialProfile([aside], [0, 0], WHOLE_CIRCLE, 4).radiiPx).toEqual(Float64Array.from([6, 0, 0, 0]));
  });

  it('over an open arc gives the same radii as over the whole circle', () => {
    const whole = radialProfile([SQUARE], [0.2, 0.1], WHOLE_CIRCLE, 720);
    // From a quarter turn (down) over three quarters, across the join at angle 0.
    const arc = { startRad: Math.PI / 2, sweepRad: (3 * Math.PI) / 2 };
    const open = radialProfile([SQUARE], [0.2, 0.1], arc, 720);
    expect(open.radiiPx).toHaveLength(541);
    for (let index = 0; index < 540; index++) {
      expect(open.radiiPx[index]).toBeCloseTo(whole.radiiPx[(index + 180) % 720] as number, 9);
    }
  });

  it('gives its points back on the outline', () => {
    for (const [x, y] of profilePoints(radialProfile([SQUARE], [0.3, -0.4], WHOLE_CIRCLE, 90))) {
      expect(Math.max(Math.abs(x), Math.abs(y))).toBeCloseTo(1, 9);
    }
  });

  it('refuses a number of directions that is no count', () => {
    expect(() => radialProfile([SQUARE], [0, 0], WHOLE_CIRCLE, 0.5)).toThrow(
      new RangeError('Expected a positive whole number for directionsPerTurn but received 0.5'),
    );
  });
});

describe('the open arc', () => {
  it('is the whole circle without a pot', () => {
    expect(openArcDeg(openArc([5, 5], null))).toBe(360);
  });

  it('leaves 270° over a rim as wide as twice its depth below the centre', () => {
    expect(openArcDeg(openArc([0, 0], rim(0, 100, 100)))).toBeCloseTo(270, 9);
  });

  it('runs from the rim’s left end clockwise over the top to its right end', () => {
    const arc = openArc([0, 0], rim(0, 100, 100));
    expect(arc.startRad).toBeCloseTo((3 * Math.PI) / 4, 12);
    expect(arc.startRad + arc.sweepRad - 2 * Math.PI).toBeCloseTo(Math.PI / 4, 12);
  });

  it('leaves less than half a circle to a centre below the rim', () => {
    expect(openArcDeg(openArc([0, 0], rim(0, -100, 100)))).toBeCloseTo(90, 9);
  });
});
