import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { afterAll, describe, expect, it } from 'vitest';
import { type MeasuredFile, type MeasureTask, NO_STAND } from '../../server/measuring/measure-file.ts';
import { openWorkerPool } from '../../server/measuring/worker-pool.ts';
import { temporaryFolder } from '../server/fixtures/open-bench.ts';
import { drawPlant } from '../server/fixtures/synthetic-plant.ts';

const pool = openWorkerPool<MeasureTask, MeasuredFile>(
  new URL('../../server/measuring/worker.ts', import.meta.url),
  { threads: 1 },
);
afterAll(() => pool.close());

async function measured(picture: Sharp): Promise<MeasuredFile> {
  const path = join(temporaryFolder(), 'odd.png');
  writeFileSync(path, await picture.png().toBuffer());
  return pool.run({
    path,
    photoName: 'odd.png',
    rimMm: 130,
    emptyPath: null,
    stand: NO_STAND,
    turnDeg: 0,
    network: false,
    colours: null,
    lastOutline: null,
    normalLeaf: null,
    strokes: [],
    pictures: 'screen',
  });
}

const plain = (background: string) => sharp({ create: { width: 900, height: 700, channels: 3, background } });

describe('a photo that cannot be measured', () => {
  it.each([
    ['nothing but a plain backdrop', () => plain('#b9b5ac'), 'no-canopy'],
    ['a pot without a plant', () => drawPlant({ leaves: 0 }), 'no-canopy'],
    ['two plants', () => drawPlant({ plantsAt: [0.26, 0.74], size: 0.2 }), 'two-plants'],
    ['a plant cut by the edge', () => drawPlant({ plantsAt: [0.08] }), 'touches-edge'],
    ['black', () => plain('#000000'), 'too-dark'],
    ['a plant in the dark', () => drawPlant().linear(0.06), 'too-dark'],
    ['a plant out of focus', () => drawPlant().blur(24), 'blurred'],
  ])('because it shows %s says so and measures nothing', async (_, picture, status) => {
    const { report, outlinePx, maskPng } = await measured(picture());
    expect(report.status).toBe(status);
    expect(report.hint).toMatch(/^[A-Z].{15,}\.$/);
    expect([report.canopy, report.ball, report.roundness, report.symmetry, report.lopsidedness]).toEqual(
      Array(5).fill(null),
    );
    expect(report.longStems).toEqual([]);
    // What was cut out of a photo with a plant on it is still drawn, so that a wrong refusal can be mended.
    const keepsCutOut = status === 'two-plants' || status === 'touches-edge';
    expect([outlinePx.length > 0, maskPng !== null]).toEqual([keepsCutOut, keepsCutOut]);
  });

  it('says in its notes what was decided while reading it', async () => {
    const { report } = await measured(drawPlant().ensureAlpha(0.999));
    expect(report.notes).toContain('The picture has transparent parts; they were taken as white.');
  });

  it('never shows NaN or infinity in any figure', async () => {
    for (const picture of [
      drawPlant(),
      drawPlant({ size: 0.05 }),
      drawPlant({ size: 0.36 }),
      plain('#3a7a3a'),
    ]) {
      const { report } = await measured(picture);
      // JSON turns both into null, so a figure that is null must be one that may be unknown.
      const text = JSON.stringify(report, (_, value) =>
        typeof value === 'number' && !Number.isFinite(value) ? 'not a number' : value,
      );
      expect(text).not.toContain('not a number');
    }
  });
});
