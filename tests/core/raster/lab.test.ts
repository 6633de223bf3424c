import { describe, expect, it } from 'vitest';
import { labOfRaster } from '../../../core/raster/lab.ts';

/**
 * Computed with culori 4.0.2 `lab65` and colorjs.io `lab-d65`, which agree exactly; formulas IEC 61966-2-1 and
 * CIE 15:2018. Primaries, greys, and three patches of the 24-patch colour chart.
 */
const VECTORS: readonly [string, number, number, number][] = [
  ['#ffffff', 100, 0, 0],
  ['#000000', 0, 0, 0],
  ['#ff0000', 53.2371, 80.0901, 67.2033],
  ['#00ff00', 87.7355, -86.1816, 83.1866],
  ['#0000ff', 32.3009, 79.1953, -107.8555],
  ['#808080', 53.585, 0, 0],
  ['#777777', 50.0344, 0, 0],
  ['#576c43', 42.9981, -15.8767, 20.4521],
  ['#c15a63', 51.3272, 42.0932, 14.8807],
  ['#bb5695', 51.1424, 48.1469, -15.2854],
];

describe('labOfRaster', () => {
  it.each(VECTORS)('turns %s into the published L*a*b* within 0.01', (hex, l, a, b) => {
    const data = Uint8Array.from([1, 3, 5], (at) => Number.parseInt(hex.slice(at, at + 2), 16));
    const lab = labOfRaster({ width: 1, height: 1, data });
    expect(Math.abs((lab.l[0] as number) - l)).toBeLessThan(0.01);
    expect(Math.abs((lab.a[0] as number) - a)).toBeLessThan(0.01);
    expect(Math.abs((lab.b[0] as number) - b)).toBeLessThan(0.01);
  });

  it('keeps pixels in their places', () => {
    const lab = labOfRaster({ width: 2, height: 1, data: Uint8Array.of(0, 0, 0, 255, 255, 255) });
    expect(lab.l[0]).toBeCloseTo(0, 3);
    expect(lab.l[1]).toBeCloseTo(100, 3);
  });
});

describe('labOfRaster with gains', () => {
  it('reads half the light with gains of two as the whole light', () => {
    // Linear 0.5 is byte 188, linear 1 is white.
    const { l } = labOfRaster({ width: 1, height: 1, data: Uint8Array.of(188, 188, 188) }, [2, 2, 2]);
    expect(Math.abs((l[0] as number) - 100)).toBeLessThan(0.3);
  });

  it('passes white by the same curve', () => {
    // CIE 15: eight times the light of white has twice the cube root: 116 × 2 − 16.
    const { l, a, b } = labOfRaster({ width: 1, height: 1, data: Uint8Array.of(255, 255, 255) }, [8, 8, 8]);
    expect(Math.abs((l[0] as number) - 216)).toBeLessThan(0.01);
    expect(Math.hypot(a[0] as number, b[0] as number)).toBeLessThan(0.02);
  });
});
