import { describe, expect, it } from 'vitest';
import {
  CURVE_KINDS,
  type CurveKind,
  formOf,
  type GrowthCurve,
  radiusAt,
  ratePerWeek,
} from '../../../core/growth/growth-curve.ts';

const curveOf = (kind: CurveKind): GrowthCurve => ({
  kind,
  startRadiusMm: 60,
  finalRadiusMm: 150,
  weeksToHalf: 4.5,
});

describe.each(CURVE_KINDS)('a %s curve', (kind) => {
  const curve = curveOf(kind);

  it('begins at its start, is half grown when it says so and ends at its final radius', () => {
    expect(radiusAt(curve, 0)).toBeCloseTo(60, 10);
    expect(radiusAt(curve, 4.5)).toBeCloseTo(105, 10);
    expect(radiusAt(curve, 500)).toBeCloseTo(150, 10);
  });

  it('grows as its differential equation says', () => {
    const k = ratePerWeek(formOf(curve));
    for (const weeks of [0.5, 3, 8, 15]) {
      const radius = radiusAt(curve, weeks);
      const slope = (radiusAt(curve, weeks + 1e-4) - radiusAt(curve, weeks - 1e-4)) / 2e-4;
      // Verhulst (1838): R′ = k·R·(1 − R ÷ A); Gompertz (1825): R′ = k·R·ln(A ÷ R).
      const law = kind === 'logistic' ? k * radius * (1 - radius / 150) : k * radius * Math.log(150 / radius);
      expect(slope).toBeCloseTo(law, 6);
    }
  });

  it('is the same in metres and millimetres', () => {
    const small = { ...curve, startRadiusMm: 0.06, finalRadiusMm: 0.15 };
    expect(1000 * radiusAt(small, 7)).toBeCloseTo(radiusAt(curve, 7), 10);
  });

  it('stays finite where there is hardly any growth, and where there is very much', () => {
    expect(radiusAt({ ...curve, finalRadiusMm: 60.001 }, 4.5)).toBeCloseTo(60.0005, 6);
    expect(radiusAt({ ...curve, startRadiusMm: 0.001 }, 4.5)).toBeCloseTo(75.0005, 6);
  });
});
