import { describe, expect, it } from 'vitest';
import { decidePlant } from '../../../core/canopy/decide-plant.ts';
import type { FoundPlant } from '../../../core/canopy/found-plant.ts';
import { type Gathered, gatherEvidence } from '../../../core/canopy/gather-evidence.ts';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import { paintStrokes } from '../../../core/canopy/paint-strokes.ts';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { Mask } from '../../../core/raster/raster.ts';
import { overlap, paintPlant } from './painted-plant.ts';

const PAINTED = paintPlant();

describe('a stroke', () => {
  it('covers its line as wide as the brush, a single point as a dab', () => {
    const drawn = paintStrokes(
      [
        {
          kind: 'keep',
          widthPx: 3,
          pointsPx: [
            [1.5, 1.5],
            [5.5, 1.5],
          ],
        },
        { kind: 'remove', widthPx: 1, pointsPx: [[4.5, 1.5]] },
      ],
      { width: 8, height: 4 },
    );
    const rows = [0, 1, 2, 3].map((y) =>
      [...drawn.labels.subarray(8 * y, 8 * y + 8)]
        .map((label) => (label > 0 ? '+' : label < 0 ? '-' : '.'))
        .join(''),
    );
    expect(rows).toEqual(['+++++++.', '++++-++.', '+++++++.', '........']);
  });

  it('decides what lies under it, whatever the voices say', async () => {
    const gathered = await gather();
    const [x, y] = [gathered.raster.width / 2, 120];
    const removed = decide(gathered, [dab('remove', x, y, 30)]);
    expect(at(removed.canopy, x, y)).toBe(0);
    const back = decide(gathered, [dab('remove', x, y, 30), dab('keep', x, y, 40)]);
    expect(at(back.canopy, x, y)).toBe(1);
  });

  it('leaves what lies far off as it was', async () => {
    const gathered = await gather();
    const before = decide(gathered, []);
    const after = decide(gathered, [dab('remove', 100, 150, 12)]);
    const changed = before.canopy.data.reduce((sum, inside, i) => {
      const [x, y] = [i % before.canopy.width, Math.floor(i / before.canopy.width)];
      return sum + (Math.hypot(x - 100, y - 150) > 90 && inside !== after.canopy.data[i] ? 1 : 0);
    }, 0);
    expect(changed).toBe(0);
  });

  it('gives the earlier outline again when it is taken back', async () => {
    const gathered = await gather();
    const before = decide(gathered, []);
    decide(gathered, [dab('remove', 180, 120, 40)]);
    expect(decide(gathered, [])).toEqual(before);
  });
});

describe('how sure a cut-out is', () => {
  it('is high on a plain photo, as is the overlap it foretells', async () => {
    const found = decide(await gather(), []);
    expect(found.confidence).toBeGreaterThan(0.8);
    expect(found.confidence).toBeLessThanOrEqual(1);
    expect(Math.abs(found.confidence - overlap(found.canopy, PAINTED.canopy))).toBeLessThan(0.15);
  });

  it('is certain under a stroke', async () => {
    const found = decide(await gather(), [dab('keep', 60, 60, 12)]);
    const { certainty } = found;
    expect(certainty.data[60 * certainty.width + 60]).toBe(255);
  });
});

async function gather(): Promise<Gathered> {
  const gathered = await gatherEvidence(PAINTED.raster, NOTHING_KNOWN);
  if (!gathered.ok) throw new Error(gathered.hint);
  return gathered;
}

function decide(gathered: Gathered, strokes: readonly Stroke[]): FoundPlant {
  const found = decidePlant(gathered, strokes);
  if (!found.ok) throw new Error(found.hint);
  return found;
}

function dab(kind: Stroke['kind'], x: number, y: number, widthPx: number): Stroke {
  return { kind, widthPx, pointsPx: [[x, y]] };
}

function at({ width, data }: Mask, x: number, y: number): number | undefined {
  return data[Math.floor(y) * width + Math.floor(x)];
}
