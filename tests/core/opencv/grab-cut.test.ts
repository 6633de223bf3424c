import { expect, it } from 'vitest';
import { openOpenCv } from '../../../core/opencv/door.ts';
import { grabCut } from '../../../core/opencv/pictures.ts';
import { busyGarden, paintPlant } from '../canopy/painted-plant.ts';

it('gives the same mask for the same picture, whatever was cut before', async () => {
  const door = await openOpenCv();
  const { raster, canopy } = paintPlant({ backdrop: busyGarden, leaf: [150, 120, 95] });
  const { width } = raster;
  const start = Uint8Array.from(canopy.data, (_, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    if (x < 20 || y < 20 || x >= width - 20) return 0;
    return Math.hypot(x - 180, y - 145) < 100 ? 3 : 2;
  });
  const first = grabCut(door, raster, start, 2);
  expect(first.some((value) => value === 3)).toBe(true);
  for (let again = 0; again < 3; again++) {
    expect(Buffer.compare(grabCut(door, raster, start, 2), first)).toBe(0);
  }
});
