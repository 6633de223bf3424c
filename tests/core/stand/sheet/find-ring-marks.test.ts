import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { median } from 'simple-statistics';
import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenCvDoor, openOpenCv } from '../../../../core/opencv/door.ts';
import type { Raster } from '../../../../core/raster/raster.ts';
import { findRingMarks } from '../../../../core/stand/sheet/find-ring-marks.ts';
import { missesOfMarks } from './misses-of-marks.ts';
import { photographSheet, SCENE, type SheetScene } from './photographed-sheet.ts';
import { readRaster } from './read-raster.ts';

let door: OpenCvDoor;
beforeAll(async () => {
  door = await openOpenCv();
});

/** Distances of the found marks from their true places, px; every mark must be found, and nothing else. */
function missesIn(changes: Partial<SheetScene>): number[] {
  const photo = photographSheet(changes);
  const { misses, strays } = missesOfMarks(photo, findRingMarks(door, photo.raster));
  expect(strays).toBe(0);
  expect(misses).toHaveLength(5);
  return misses;
}

const SMALL = { widthPx: 1000, heightPx: 750 };

describe('ring marks in a photo', () => {
  it('are found to a tenth of a px on clean photos, straight on and tilted by 40°', () => {
    expect(median(missesIn({ ...SMALL, distanceMm: 1500 }))).toBeLessThan(0.1);
    expect(
      median(missesIn({ ...SMALL, distanceMm: 1100, tiltDeg: 40, tiltAboutDeg: 20, turnDeg: 25 })),
    ).toBeLessThan(0.1);
  });

  it('are found to three tenths with noise, uneven light and a cast', () => {
    const noisy = { ...SMALL, noiseSteps: 4, lightFall: 0.6, cast: [1, 0.9, 0.6] as const, turnDeg: -100 };
    expect(median(missesIn({ ...noisy, distanceMm: 1500 }))).toBeLessThan(0.3);
    expect(median(missesIn({ ...noisy, distanceMm: 3000, paper: 'Letter' }))).toBeLessThan(0.3);
  });

  it('are found down to 14 px across', () => {
    // The dots are 48 mm across: 14 px at 3.43 mm a px.
    expect(median(missesIn({ ...SMALL, distanceMm: (48 / 14) * SCENE.focalPx, noiseSteps: 2 }))).toBeLessThan(
      0.3,
    );
  });

  it('are found through blur of 2 px where a ring is 3 px wide', () => {
    expect(median(missesIn({ ...SMALL, distanceMm: 3000, blurPx: 2, noiseSteps: 2 }))).toBeLessThan(0.3);
  });

  it('are found large, near the camera', () => {
    expect(median(missesIn({ ...SMALL, distanceMm: 550, noiseSteps: 2 }))).toBeLessThan(0.1);
  });

  it('stay hidden behind leaves: a mark covered by a third is left out, the others keep their places', () => {
    const photo = photographSheet({ ...SMALL, leaves: [{ centreMm: [12, 70], radiusMm: 45 }] });
    const { misses, strays } = missesOfMarks(photo, findRingMarks(door, photo.raster));
    expect(strays).toBe(0);
    expect(misses).toHaveLength(4);
    expect(Math.max(...misses)).toBeLessThan(0.1);
  });

  it('are none on plants: no mark on any sample photo', async () => {
    const folder = join(import.meta.dirname, '../../../../sample-images');
    const photos = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
      name.endsWith('.jpg'),
    );
    expect(photos.length).toBeGreaterThan(50);
    for (const photo of photos) {
      expect(findRingMarks(door, await readRaster(join(folder, photo))), photo).toEqual([]);
    }
  });

  it('are none where rings lie askew or only two outlines lie about one another', () => {
    const askew = drawn((x, y) => {
      if (Math.hypot(x - 65, y - 100) < 12) return 20;
      if (Math.hypot(x - 75, y - 100) < 40) return 230;
      return Math.hypot(x - 80, y - 100) < 60 ? 20 : 230;
    });
    const flower = drawn((x, y) =>
      Math.hypot(x - 100, y - 100) < 20 ? 20 : Math.hypot(x - 100, y - 100) < 60 ? 230 : 90,
    );
    expect(findRingMarks(door, askew)).toEqual([]);
    expect(findRingMarks(door, flower)).toEqual([]);
  });
});

function drawn(grey: (x: number, y: number) => number): Raster {
  const [width, height] = [220, 200];
  const data = new Uint8Array(3 * width * height);
  for (let i = 0; i < width * height; i++)
    data.fill(grey((i % width) + 0.5, Math.floor(i / width) + 0.5), 3 * i, 3 * i + 3);
  return { width, height, data };
}
