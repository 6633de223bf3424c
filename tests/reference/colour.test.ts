import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { labOfRaster } from '../../core/raster/lab.ts';

/**
 * Colour against another library over the whole cube of sRGB. Source: npm culori, `lab65` (IEC 61966-2-1 to CIE L*a*b* under
 * D65); its plain `lab` is D50 and would be off by up to 40. The printed vectors are held in `tests/core/raster/lab.test.ts`.
 */
const STEPS = [0, 10, 11, 51, 102, 153, 204, 230, 255];

describe('L*a*b* over the cube of sRGB', () => {
  it('agrees with culori to 0.01 everywhere', () => {
    const toLab = converter('lab65');
    let worst = 0;
    for (const r of STEPS) {
      for (const g of STEPS) {
        for (const b of STEPS) {
          const wanted = toLab({ mode: 'rgb', r: r / 255, g: g / 255, b: b / 255 });
          const read = labOfRaster({ width: 1, height: 1, data: Uint8Array.of(r, g, b) });
          worst = Math.max(
            worst,
            Math.abs((read.l[0] as number) - wanted.l),
            Math.abs((read.a[0] as number) - wanted.a),
            Math.abs((read.b[0] as number) - wanted.b),
          );
        }
      }
    }
    expect(worst).toBeLessThan(0.01);
  });

  it('is not the D50 kind, which would differ by tens', () => {
    const d50 = converter('lab')({ mode: 'rgb', r: 0, g: 0, b: 1 });
    const read = labOfRaster({ width: 1, height: 1, data: Uint8Array.of(0, 0, 255) });
    expect(Math.abs((read.a[0] as number) - d50.a)).toBeGreaterThan(5);
  });
});
