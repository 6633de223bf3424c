import { describe, expect, it } from 'vitest';
import { openOpenCv } from '../../core/opencv/door.ts';
import { calibrationError, certaintyLines, noPixels, notePixels } from './certainty-check.ts';
import { confidenceLines, meanAbsoluteError, rankCorrelation } from './confidence.ts';
import { exposeRaster } from './expose-raster.ts';
import { intersectionOverUnion } from './overlap.ts';
import { quantile } from './quantile.ts';
import { rememberNetwork } from './remember-network.ts';

const line = (words: string) => ({
  width: words.length,
  height: 1,
  data: Uint8Array.from(words, (letter) => (letter === '#' ? 1 : 0)),
});

describe('the scores’ measures', () => {
  it('quantiles lie straight between ranks, as in Hyndman and Fan (1996) type 7', () => {
    expect(quantile([3, 1, 2, 4], 0.5)).toBe(2.5);
    expect(quantile([10, 20, 30, 40, 50], 0.1)).toBeCloseTo(14, 12);
    expect(quantile([7], 0.1)).toBe(7);
    expect(quantile([], 0.5)).toBeNaN();
  });

  it('overlap is shared px over all px', () => {
    expect(intersectionOverUnion(line('###...'), line('.####.'))).toBe(2 / 5);
    expect(intersectionOverUnion(line('......'), line('......'))).toBe(0);
  });

  it('ranks stated confidence as Spearman does', () => {
    // Ten pupils' intelligence and hours of television, a worked example met in many courses: rho = -29/165.
    const iq = [106, 86, 100, 101, 99, 103, 97, 113, 112, 110];
    const hours = [7, 0, 27, 50, 28, 29, 20, 12, 6, 17];
    const photos = iq.map((confidence, k) => ({ confidence, iou: hours[k] as number }));
    expect(rankCorrelation(photos)).toBeCloseTo(-29 / 165, 6);
    expect(rankCorrelation(photos.slice(0, 2))).toBeNull();
  });

  it('puts photos into bins of stated confidence and says how far off they are', () => {
    const photos = [
      { confidence: 1, iou: 0.9 },
      { confidence: 0.98, iou: 0.96 },
      { confidence: 0.5, iou: 0.7 },
    ];
    const lines = confidenceLines(photos);
    expect(lines.map(({ from, photos: count }) => [from, count])).toEqual([
      [0, 1],
      [0.98, 2],
    ]);
    expect(lines[1]?.meanMeasured).toBeCloseTo(0.93, 12);
    expect(meanAbsoluteError(photos)).toBeCloseTo((0.1 + 0.02 + 0.2) / 3, 12);
  });
});

describe('the pixels’ certainty', () => {
  it('counts how often pixels of each certainty are right', async () => {
    const door = await openOpenCv();
    const size = { width: 10, height: 10 };
    const wanted = { ...size, data: new Uint8Array(100).fill(1) };
    // The upper half is found and said to be certain, the lower half missed and said to be a toss.
    const upper = Uint8Array.from({ length: 100 }, (_, i) => (i < 50 ? 1 : 0));
    const found = {
      canopy: { ...size, data: upper },
      certainty: { ...size, data: upper.map((inside) => 255 * inside) },
    };
    const pixelCheck = noPixels();
    notePixels(pixelCheck, door, found, wanted);
    const lines = certaintyLines(pixelCheck);
    expect(lines[0]).toMatchObject({ from: 0.5, share: 0.5, stated: 0.5, right: 0 });
    expect(lines[4]).toMatchObject({ to: 1, share: 0.5, stated: 1, right: 1 });
    expect(lines[2]).toMatchObject({ share: 0, stated: null, right: null });
    expect(calibrationError(lines)).toBeCloseTo(0.25, 12);
  });
});

describe('exposing a photo anew', () => {
  const grey = (byte: number) => ({ width: 1, height: 1, data: Uint8Array.of(byte, byte, byte) });

  it('doubles and cuts linear light, clipped at white', () => {
    // sRGB 188 is half the light of white (0.5029), 137 a quarter (0.2502): IEC 61966-2-1.
    expect(exposeRaster(grey(137), 2).data[0]).toBe(188);
    expect(exposeRaster(grey(188), 0.5).data[0]).toBe(137);
    expect(exposeRaster(grey(200), 2).data[0]).toBe(255);
    expect(exposeRaster(grey(0), 2).data[0]).toBe(0);
    expect(exposeRaster(grey(77), 1).data[0]).toBe(77);
  });
});

describe('a network that remembers', () => {
  it('looks once at a picture, again at another and after forgetting', async () => {
    let looks = 0;
    const network = rememberNetwork({
      run: async (planes) => {
        looks++;
        return planes.map((value) => 2 * value);
      },
      release: async () => {},
    });
    const planes = Float32Array.of(1, 2, 3);
    const first = await network.run(planes, 1, 1);
    first[0] = 99;
    expect(await network.run(Float32Array.of(1, 2, 3), 1, 1)).toEqual(Float32Array.of(2, 4, 6));
    expect(looks).toBe(1);
    await network.run(Float32Array.of(1, 2, 4), 1, 1);
    expect(looks).toBe(2);
    network.forget();
    await network.run(planes, 1, 1);
    expect(looks).toBe(3);
  });
});
