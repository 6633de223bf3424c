import { beforeAll, describe, expect, it } from 'vitest';
import { seededNoise } from '../../../../core/measures/seeded-noise.ts';
import { type OpenCvDoor, openOpenCv } from '../../../../core/opencv/door.ts';
import { shrinkRaster } from '../../../../core/opencv/pictures.ts';
import type { Raster } from '../../../../core/raster/raster.ts';
import { detailPicture } from '../../../../core/stand/frame/detail-picture.ts';
import { countRealCorners } from '../../../../core/stand/frame/real-corners.ts';
import { IDENTITY } from '../../../../core/stand/frame/similarity.ts';
import { cornersOf } from '../../../../core/stand/frame/track-stand.ts';

const [WIDTH, HEIGHT] = [800, 600];

let door: OpenCvDoor;
beforeAll(async () => {
  door = await openOpenCv();
});

/** A white wall above white boards; the dark joints run level, or are cut into tiles. */
function wall(tiled: boolean): Raster {
  const noise = seededNoise(5);
  const data = new Uint8Array(3 * WIDTH * HEIGHT);
  for (let row = 0, at = 0; row < HEIGHT; row++) {
    for (let column = 0; column < WIDTH; column++) {
      const isJoint = row > 300 && (row % 60 < 2 || (tiled && (column + row * 2) % 90 < 3));
      // The JPEG of a camera leaves a faint pattern of eight px, the same in every row.
      const light = (isJoint ? 150 : 248) + 0.4 * Math.sin((2 * Math.PI * column) / 8) + noise.normal();
      for (let channel = 0; channel < 3; channel++) data[at++] = Math.min(255, light);
    }
  }
  return { width: WIDTH, height: HEIGHT, data };
}

function realCornersOf(raster: Raster): number {
  const detail = detailPicture(door, shrinkRaster(door, raster, 200));
  const seen = { detail, moving: null };
  return countRealCorners(door, raster, detail, cornersOf(door, seen, seen, IDENTITY));
}

describe('corners that a camera can be told by', () => {
  it('are few where level lines are all there is: nothing holds along them', () => {
    expect(realCornersOf(wall(false))).toBeLessThan(20);
  });

  it('are many where lines cross', () => {
    expect(realCornersOf(wall(true))).toBeGreaterThan(40);
  });
});
