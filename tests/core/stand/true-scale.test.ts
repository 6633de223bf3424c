import { describe, expect, it } from 'vitest';
import { ballOutline, ballRadiusMm, outlineFactor } from '../../../core/stand/true-scale.ts';

/** Projected by a pinhole: the tangent cone of a ball cut by the picture plane, found by search, not by formula. */
function tangentExtentPx(radiusMm: number, distanceMm: number, offAxisRad: number, focalPx: number) {
  const half = Math.asin(radiusMm / distanceMm);
  const outer = focalPx * Math.tan(offAxisRad + half);
  const inner = focalPx * Math.tan(offAxisRad - half);
  return (outer - inner) / 2;
}

describe('a ball seen from near', () => {
  it.each([
    [150, 1000, 1.011443],
    [200, 1000, 1.020621],
    [200, 1500, 1.009009],
    [250, 2000, 1.007905],
  ])('of radius %d mm at %d mm reads %d times as large', (radius, distance, factor) => {
    // Sphere silhouette f R ÷ √(D² − R²) against f R ÷ D; computed apart from this code.
    expect(outlineFactor(radius, distance)).toBeCloseTo(factor, 6);
    expect(ballRadiusMm(radius * factor, distance)).toBeCloseTo(radius, 3);
  });

  it.each([
    [0, 134.5346, 134.5346],
    [5, 135.5831, 135.0578],
    [10, 138.7955, 136.6484],
    [15, 144.3813, 139.371],
    [20, 152.7231, 143.3406],
  ])('is an ellipse %d° beside the middle', (offAxisDeg, radial, across) => {
    // f 1000 px, R 200 mm, D 1500 mm; half axes confirmed by a numeric tangent cone.
    const offAxisRad = (offAxisDeg * Math.PI) / 180;
    const outline = ballOutline({ radiusMm: 200, distanceMm: 1500 }, offAxisRad, 1000);
    expect(outline.radialPx).toBeCloseTo(radial, 3);
    expect(outline.acrossPx).toBeCloseTo(across, 3);
    expect(outline.radialPx).toBeCloseTo(tangentExtentPx(200, 1500, offAxisRad, 1000), 9);
  });

  it('takes no distance inside the ball', () => {
    expect(() => outlineFactor(200, 200)).toThrow(
      'Expected a positive number for distanceMm less radiusMm but received 0',
    );
    expect(() => ballRadiusMm(Number.NaN, 1000)).toThrow('outlineRadiusMm');
  });
});
