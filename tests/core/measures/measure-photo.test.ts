import { describe, expect, it } from 'vitest';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import { gatherPhoto, measureGathered, measurePhoto } from '../../../core/measure-photo.ts';
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

const OPTIONS = { ...NOTHING_KNOWN, photoName: 'drawn.jpg', rimMm: 130, turnDeg: null, stand: null };
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

describe('a photo that the grower draws on', () => {
  const photo = upright(drawnPhoto(640, 480, true));
  // Px of the photo, which is twice as large as the raster: a bar of wall at the ball's right shoulder.
  const keep: Stroke = {
    kind: 'keep',
    widthPx: 60,
    pointsPx: [
      [930, 300],
      [1010, 300],
    ],
  };

  it('is heard once and decided anew with every list of strokes', async () => {
    const gathered = await gatherPhoto(photo, OPTIONS);
    const before = measureGathered(gathered, []);
    const after = measureGathered(gathered, [keep]);
    const inRaster = (x: number, y: number) =>
      after.canopy?.data[Math.floor(y / 2) * 640 + Math.floor(x / 2)];
    expect(inRaster(970, 300)).toBe(1);
    expect(before.canopy?.data[150 * 640 + 485]).toBe(0);
    expect(after.report.canopy?.widthPx).toBeGreaterThan((before.report.canopy?.widthPx ?? 0) + 20);
    // Taking the stroke back takes it back whole.
    expect(measureGathered(gathered, []).report).toEqual(before.report);
  });

  it('gives in two steps what it gives in one', async () => {
    const inTwo = measureGathered(await gatherPhoto(photo, OPTIONS), [keep]);
    expect((await measurePhoto(photo, OPTIONS, [keep])).report).toEqual(inTwo.report);
  });

  it('hands on the cut-out and the pot’s outline in px of the photo', async () => {
    const { found, partsOutlines, report } = await measurePhoto(photo, OPTIONS);
    expect(found?.confidence).toBe(report.confidence);
    const xs = partsOutlines.pot.flat().map(([x]) => x);
    // The pot is 160 px wide at its rim in the raster, so 320 in the photo: from 480 to 800.
    expect(Math.abs(Math.min(...xs) - 480)).toBeLessThan(16);
    expect(Math.abs(Math.max(...xs) - 800)).toBeLessThan(16);
    expect(report.canopy?.flowerShare).toBeNull();
  });
});
