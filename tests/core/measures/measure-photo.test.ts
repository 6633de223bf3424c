import { describe, expect, it } from 'vitest';
import { measurePhoto } from '../../../core/measure-photo.ts';
import type { Raster } from '../../../core/raster/raster.ts';

const PALE = [222, 220, 214] as const;
const LEAF = [70, 120, 50] as const;
const CLAY = [176, 98, 66] as const;

/** A green ball of radius 150 on a clay pot before a pale wall, with a little grain so that it looks taken. */
function drawnPhoto(width: number, height: number, hasPlant: boolean): Raster {
  const data = new Uint8Array(3 * width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const isLeaf = hasPlant && Math.hypot(x - 320, y - 220) < 150 && y < 340;
      const isPot = hasPlant && y >= 340 && y < 440 && Math.abs(x - 320) < 80 - (y - 340) / 5;
      const colour = isLeaf ? LEAF : isPot ? CLAY : PALE;
      const grain = ((x * 7919 + y * 104729) % 13) - 6;
      colour.forEach((level, channel) => {
        data[3 * (y * width + x) + channel] = level + grain;
      });
    }
  }
  return { width, height, data };
}

const OPTIONS = { photoName: 'drawn.jpg', rimMm: 130, empty: null, turnDeg: null };
const upright = (raster: Raster) => ({ raster, widthPx: 2 * raster.width, heightPx: 2 * raster.height });

describe('a photo on its way through', () => {
  it('of a ball on a pot is measured, in px of the photo', async () => {
    const { report, outlinePx } = await measurePhoto(upright(drawnPhoto(640, 480, true)), OPTIONS);
    expect(report.status).toBe('measured');
    expect(Math.abs((report.ball?.radiusPx ?? 0) - 300)).toBeLessThan(6);
    expect(report.roundness?.score).toBeGreaterThan(95);
    expect(Math.abs((report.axis?.xPx ?? 0) - 640)).toBeLessThan(4);
    expect(report.lopsidedness?.side).toBe('even');
    expect(outlinePx.length).toBeGreaterThan(20);
  });

  it('does not use an empty photo of another size, and says what to do', async () => {
    const { report } = await measurePhoto(upright(drawnPhoto(640, 480, true)), {
      ...OPTIONS,
      empty: drawnPhoto(480, 640, false),
    });
    expect(report.status).toBe('measured');
    expect(report.notes).toContain(
      'The empty photo was not used: it is 480 × 640 px and this photo 640 × 480 px as measured. Take both with the same camera, zoom and way up.',
    );
  });

  it('gives the same report every time', async () => {
    const photo = upright(drawnPhoto(640, 480, true));
    expect((await measurePhoto(photo, OPTIONS)).report).toEqual((await measurePhoto(photo, OPTIONS)).report);
  });
});
