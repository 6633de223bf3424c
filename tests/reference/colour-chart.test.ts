import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { colourDifference, labOfSrgb } from '../../core/colour/colour-difference.ts';
import { labOfRaster } from '../../core/raster/lab.ts';

/**
 * The 24-patch colour chart as its maker publishes it: CIE L*a*b* under D50, 2° observer, charts made before November 2014, from
 * the open data set of the Python package colour-science (`chromaticity_coordinates.py`). Beside it the 8-bit sRGB that is
 * often printed for it (an encyclopaedia's table, copied by open shader collections; from memory of those copies).
 */
const CHART: readonly (readonly [name: string, l: number, a: number, b: number, srgb: string | null])[] = [
  ['dark skin', 37.986, 13.555, 14.059, '735244'],
  ['light skin', 65.711, 18.13, 17.81, 'c29682'],
  ['blue sky', 49.927, -4.88, -21.905, '627a9d'],
  ['foliage', 43.139, -13.095, 21.905, '576c43'],
  ['blue flower', 55.112, 8.844, -25.399, '8580b1'],
  ['bluish green', 70.719, -33.397, -0.199, '67bdaa'],
  ['orange', 62.661, 36.067, 57.096, 'd67e2c'],
  ['purplish blue', 40.02, 10.41, -45.964, '505ba6'],
  ['moderate red', 51.124, 48.239, 16.248, 'c15a63'],
  ['purple', 30.325, 22.976, -21.587, '5e3c6c'],
  ['yellow green', 72.532, -23.709, 57.255, '9dbc40'],
  ['orange yellow', 71.941, 19.363, 67.857, 'e0a32e'],
  ['blue', 28.778, 14.179, -50.297, '383d96'],
  ['green', 55.261, -38.342, 31.37, '469449'],
  ['red', 42.101, 53.378, 28.19, 'af363c'],
  ['yellow', 81.733, 4.039, 79.819, null],
  ['magenta', 51.935, 49.986, -14.574, null],
  ['white 9.5', 96.539, -0.425, 1.186, null],
  ['neutral 8', 81.257, -0.638, -0.335, null],
  ['neutral 6.5', 66.766, -0.734, -0.504, null],
  ['neutral 5', 50.867, -0.153, -0.27, null],
  ['neutral 3.5', 35.656, -0.421, -1.231, null],
  ['black 2', 20.461, -0.079, -0.973, null],
];

/** D50 to D65 by Bradford's adaptation, as culori does it. */
const toD65 = converter('lab65');
const underD65 = (l: number, a: number, b: number) => {
  const lab = toD65({ mode: 'lab', l, a, b });
  return { l: lab.l, a: lab.a, b: lab.b };
};

const bytesOf = (srgb: string) =>
  [0, 2, 4].map((at) => Number.parseInt(srgb.slice(at, at + 2), 16)) as [number, number, number];

describe('the colour chart', () => {
  it('reads as published where its sRGB is known, as far as the two tables agree', () => {
    const apart = CHART.flatMap(([, l, a, b, srgb]) =>
      srgb === null ? [] : [colourDifference(labOfSrgb(bytesOf(srgb)), underD65(l, a, b))],
    ).sort((one, other) => one - other);
    // The sRGB table is of another measurement and another way to D65: they differ most in blue, by 3.5.
    expect(apart[apart.length >> 1]).toBeLessThan(2);
    expect(apart.at(-1)).toBeLessThan(3.6);
  });

  it('has no patch that is nearer to another one than to itself', () => {
    for (const [name, , , , srgb] of CHART) {
      if (srgb === null) continue;
      const seen = labOfSrgb(bytesOf(srgb));
      const apart = CHART.map(([other, l, a, b]) => ({
        other,
        by: colourDifference(seen, underD65(l, a, b)),
      })).sort((one, next) => one.by - next.by);
      expect(apart[0]?.other).toBe(name);
    }
  });

  it('reads in a picture as by the library', () => {
    for (const [, , , , srgb] of CHART) {
      if (srgb === null) continue;
      const rgb = bytesOf(srgb);
      const { l, a, b } = labOfRaster({ width: 1, height: 1, data: Uint8Array.from(rgb) });
      const fast = { l: l[0] as number, a: a[0] as number, b: b[0] as number };
      expect(colourDifference(fast, labOfSrgb(rgb))).toBeLessThan(0.02);
    }
  });

  it('has neutral patches that are neutral under D65 too', () => {
    for (const [name, l, a, b] of CHART) {
      if (!/neutral|black|white/.test(name)) continue;
      const lab = underD65(l, a, b);
      expect(Math.hypot(lab.a, lab.b)).toBeLessThan(1.5);
      expect(Math.abs(lab.l - l)).toBeLessThan(0.1);
    }
  });
});
