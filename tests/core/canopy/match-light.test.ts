import { converter } from 'culori';
import { describe, expect, it } from 'vitest';
import { colourCells, colourShares, smoothShares } from '../../../core/canopy/colour-table.ts';
import { inLight, matchLight, SAME_LIGHT } from '../../../core/canopy/match-light.ts';
import { labOfRaster } from '../../../core/raster/lab.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import { busyGarden, paintPlant } from './painted-plant.ts';

const { raster } = paintPlant({ backdrop: busyGarden });

/** Every pixel with this much more light in each band, as a camera without a tone curve would have stored it. */
function lit(picture: Raster, gains: readonly [number, number, number]): Raster {
  const toLinear = converter('lrgb');
  const toBytes = converter('rgb');
  const tables = gains.map((gain, band) =>
    Uint8Array.from({ length: 256 }, (_, byte) => {
      const { r } = toLinear({ mode: 'rgb', r: byte / 255, g: 0, b: 0 });
      const coded = toBytes({ mode: 'lrgb', r: Math.min(1, gain * r), g: 0, b: 0 }).r;
      return band >= 0 ? Math.round(255 * coded) : 0;
    }),
  );
  return { ...picture, data: picture.data.map((byte, i) => tables[i % 3]?.[byte] as number) };
}

function densityOf(picture: Raster): Float32Array {
  const lab = labOfRaster(picture);
  return smoothShares(colourShares(colourCells(lab), new Uint8Array(lab.l.length).fill(1)));
}

describe('a picture in another light', () => {
  it('has the colours that CIE L*a*b* gives for half of the light', () => {
    // culori's lab65 is the outside reference: CIE 15 with the D65 white.
    const toLab = converter('lab65');
    const toLinear = converter('lrgb');
    const bytes = Uint8Array.of(120, 160, 90, 200, 90, 60, 210, 210, 205);
    const halved = inLight(labOfRaster({ width: 3, height: 1, data: bytes }), { ...SAME_LIGHT, stops: -1 });
    for (let i = 0; i < 3; i++) {
      const [r, g, b] = [...bytes.subarray(3 * i, 3 * i + 3)].map((byte) => byte / 255);
      const linear = toLinear({ mode: 'rgb', r: r as number, g: g as number, b: b as number });
      const wanted = toLab({ mode: 'lrgb', r: linear.r / 2, g: linear.g / 2, b: linear.b / 2 });
      expect(halved.l[i]).toBeCloseTo(wanted.l, 1);
      expect(halved.a[i]).toBeCloseTo(wanted.a, 1);
      expect(halved.b[i]).toBeCloseTo(wanted.b, 1);
    }
  });

  it('is the picture itself in the same light', () => {
    const picture = labOfRaster(raster);
    expect(inLight(picture, SAME_LIGHT).a).toEqual(picture.a);
    expect(inLight(picture, SAME_LIGHT).l[1000]).toBeCloseTo(picture.l[1000] as number, 4);
  });
});

describe('the light found', () => {
  const density = densityOf(raster);

  it('is no other for the very photo', () => {
    const { stops, tintA, tintB } = matchLight(labOfRaster(raster), density);
    expect(Math.abs(stops)).toBeLessThan(0.1);
    expect(Math.hypot(tintA, tintB)).toBeLessThan(1.5);
  });

  // A fifth of a stop is 5 L* units at mid-grey, half of a cell of the table.
  it.each([
    [0.5, 1],
    [0.7, 0.51],
    [1.2, -0.26],
  ])('brings a photo with %f of the light back', (gain, wanted) => {
    const { stops } = matchLight(labOfRaster(lit(raster, [gain, gain, gain])), density);
    expect(Math.abs(stops - wanted)).toBeLessThan(0.2);
  });

  it('takes a warm cast off', () => {
    const warm = labOfRaster(lit(raster, [1.12, 1, 0.85]));
    const light = matchLight(warm, density);
    expect(light.tintB).toBeLessThan(-4);
    const [plain, back] = [labOfRaster(raster), inLight(warm, light)];
    const mean = (plane: Float32Array) => plane.reduce((sum, value) => sum + value, 0) / plane.length;
    expect(Math.abs(mean(back.b) - mean(plain.b))).toBeLessThan(0.4 * Math.abs(mean(warm.b) - mean(plain.b)));
  });

  it('stays near no change in a place never met', () => {
    const elsewhere = paintPlant({ backdrop: () => [70, 105, 165], leaf: [150, 90, 70] });
    const { stops } = matchLight(labOfRaster(elsewhere.raster), density);
    expect(Math.abs(stops)).toBeLessThan(1);
  });
});
