import { describe, expect, it } from 'vitest';
import { findPlant } from '../../../core/canopy/find-plant.ts';
import type { FoundPlant, NoPlant } from '../../../core/canopy/found-plant.ts';
import { NOTES } from '../../../core/canopy/hints.ts';
import { NOTHING_KNOWN } from '../../../core/canopy/known.ts';
import type { Raster } from '../../../core/raster/raster.ts';
import { busyGarden, type Colour, overlap, paintPlant, recolour } from './painted-plant.ts';

function measured(found: FoundPlant | NoPlant): FoundPlant {
  if (!found.ok) throw new Error(`not measured: ${found.reason}`);
  return found;
}

describe('a plant before a plain backdrop', () => {
  const backdrops: Record<string, Colour> = {
    white: [246, 246, 244],
    grey: [150, 150, 152],
    'near-black': [18, 18, 20],
    blue: [70, 105, 165],
    'dusty pink': [205, 160, 160],
  };
  it.each(Object.entries(backdrops))('is cut out before %s', async (_, backdrop) => {
    const painted = paintPlant({ backdrop: () => backdrop });
    const found = measured(await findPlant(painted.raster, NOTHING_KNOWN));
    expect(overlap(found.canopy, painted.canopy)).toBeGreaterThan(0.95);
  });

  it('is cut out where light falls off across the backdrop and a shadow lies on the floor', async () => {
    const painted = paintPlant({ backdrop: (x, y) => [235 - 0.15 * x, 232 - 0.15 * x, 226 - 0.1 * y] });
    const found = measured(await findPlant(painted.raster, NOTHING_KNOWN));
    expect(overlap(found.canopy, painted.canopy)).toBeGreaterThan(0.95);
  });

  it('is cut out before a wall and a table of different colour', async () => {
    const painted = paintPlant({ backdrop: (_, y) => (y < 330 ? [70, 105, 165] : [190, 150, 110]) });
    const found = measured(await findPlant(painted.raster, NOTHING_KNOWN));
    expect(overlap(found.canopy, painted.canopy)).toBeGreaterThan(0.95);
  });

  it('keeps a gap through which the backdrop shows', async () => {
    const gap = { x: 175, y: 120, radius: 16 };
    const painted = paintPlant({ gap });
    const { canopy } = measured(await findPlant(painted.raster, NOTHING_KNOWN));
    expect(canopy.data[gap.y * canopy.width + gap.x]).toBe(0);
    expect(canopy.data[(gap.y - 24) * canopy.width + gap.x]).toBe(1);
  });

  it('says how sure the outline is, between the pixel grid and a few px', async () => {
    const found = measured(await findPlant(paintPlant().raster, NOTHING_KNOWN));
    expect(found.edgeUncertaintyPx).toBeGreaterThanOrEqual(0.5);
    expect(found.edgeUncertaintyPx).toBeLessThan(3);
  });
});

describe('the pot rim', () => {
  const pots: Record<string, { pot: Colour; backdrop: Colour }> = {
    terracotta: { pot: [175, 95, 65], backdrop: [225, 224, 220] },
    black: { pot: [32, 32, 34], backdrop: [225, 224, 220] },
    white: { pot: [228, 228, 226], backdrop: [120, 124, 130] },
    green: { pot: [45, 95, 70], backdrop: [215, 214, 210] },
  };
  it.each(Object.entries(pots))(
    'of a %s pot is found within 3 % of its width',
    async (_, { pot, backdrop }) => {
      const painted = paintPlant({ pot, backdrop: () => backdrop });
      const found = measured(await findPlant(painted.raster, NOTHING_KNOWN));
      const tolerance = 0.03 * (painted.rimRightX - painted.rimLeftX);
      expect(found.pot).not.toBeNull();
      expect(Math.abs((found.pot?.rimLeftPx[0] ?? 0) - painted.rimLeftX)).toBeLessThan(tolerance);
      expect(Math.abs((found.pot?.rimRightPx[0] ?? 0) - painted.rimRightX)).toBeLessThan(tolerance);
    },
  );
});

describe('a busy place', () => {
  const painted = paintPlant({ backdrop: busyGarden });

  it('is measured well with a photo of the empty stand', async () => {
    const found = measured(await findPlant(painted.raster, { ...NOTHING_KNOWN, empty: painted.empty }));
    expect(overlap(found.canopy, painted.canopy)).toBeGreaterThan(0.93);
  });

  it('is measured well when the empty photo was brighter and the camera moved by 2 px', async () => {
    const brighter = recolour(shifted(painted.empty, 2, 1), (value) => 1.15 * value);
    const found = measured(await findPlant(painted.raster, { ...NOTHING_KNOWN, empty: brighter }));
    expect(overlap(found.canopy, painted.canopy)).toBeGreaterThan(0.9);
  });

  it('without one says that the outline was guessed', async () => {
    const found = await findPlant(painted.raster, NOTHING_KNOWN);
    if (found.ok) expect(found.notes).toContain(NOTES.busyPlace);
    else expect(found.hint).toMatch(/backdrop|space/);
  });

  it('leaves aside an empty photo of another place, and says so', async () => {
    const other = paintPlant({ backdrop: (x, y) => busyGarden(y + 500, x + 900) }).empty;
    const plain = paintPlant();
    const found = measured(await findPlant(plain.raster, { ...NOTHING_KNOWN, empty: other }));
    expect(found.notes).toContain(NOTES.emptyMoved);
    expect(overlap(found.canopy, plain.canopy)).toBeGreaterThan(0.95);
  });
});

describe('a photo that cannot be measured', () => {
  it('without a plant has no canopy, and the hint says what to do', async () => {
    const found = await findPlant(paintPlant().empty, NOTHING_KNOWN);
    expect(found).toMatchObject({ ok: false, reason: 'no-canopy' });
    if (!found.ok) expect(found.hint).toMatch(/plain backdrop/);
  });

  it('touches the edge when the crown runs out of the photo', async () => {
    const found = await findPlant(paintPlant({ centreX: 70 }).raster, NOTHING_KNOWN);
    expect(found).toMatchObject({ ok: false, reason: 'touches-edge' });
    if (!found.ok) expect(found.hint).toMatch(/move the camera back/);
  });

  it('keeps what was cut out, so that it can be seen and mended', async () => {
    const painted = paintPlant({ centreX: 70 });
    const found = await findPlant(painted.raster, NOTHING_KNOWN);
    if (found.ok || found.cutOut === null) throw new Error('Expected a refusal with its cut-out');
    expect(overlap(found.cutOut.canopy, painted.canopy)).toBeGreaterThan(0.9);
  });

  it('shows two plants when two of a size stand apart', async () => {
    const one = paintPlant({ radius: 75, centreX: 180 });
    const found = await findPlant(besides(one.raster, one.raster), NOTHING_KNOWN);
    expect(found).toMatchObject({ ok: false, reason: 'two-plants' });
  });

  it('is too dark when hardly any light came in, but not for a dark backdrop', async () => {
    const dark = recolour(paintPlant().raster, (value) => 0.12 * value);
    expect(await findPlant(dark, NOTHING_KNOWN)).toMatchObject({ ok: false, reason: 'too-dark' });
  });

  it('is blurred when every edge is wide', async () => {
    const blurred = smeared(paintPlant().raster, 14);
    expect(await findPlant(blurred, NOTHING_KNOWN)).toMatchObject({ ok: false, reason: 'blurred' });
  });

  it('is not called blurred for being bland', async () => {
    const bland = recolour(paintPlant().raster, (value) => 90 + 0.45 * value);
    expect((await findPlant(bland, NOTHING_KNOWN)).ok).toBe(true);
  });
});

function shifted(raster: Raster, right: number, down: number): Raster {
  const { width, height } = raster;
  const data = new Uint8Array(raster.data.length);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const from =
        Math.min(height - 1, Math.max(0, y - down)) * width + Math.min(width - 1, Math.max(0, x - right));
      data.set(raster.data.subarray(3 * from, 3 * from + 3), 3 * (y * width + x));
    }
  }
  return { width, height, data };
}

function besides(left: Raster, right: Raster): Raster {
  const width = left.width + right.width;
  const data = new Uint8Array(3 * width * left.height);
  for (let y = 0; y < left.height; y++) {
    data.set(left.data.subarray(3 * y * left.width, 3 * (y + 1) * left.width), 3 * y * width);
    data.set(
      right.data.subarray(3 * y * right.width, 3 * (y + 1) * right.width),
      3 * (y * width + left.width),
    );
  }
  return { width, height: left.height, data };
}

/** Three box means along each axis, near enough to a lens out of focus. */
function smeared(raster: Raster, radius: number): Raster {
  const { width, height } = raster;
  let from = Float64Array.from(raster.data);
  for (let pass = 0; pass < 4; pass++) {
    const along = pass % 2 === 0;
    const to = new Float64Array(from.length);
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        for (let c = 0; c < 3; c++) {
          let sum = 0;
          for (let off = -radius; off <= radius; off += 2) {
            const sx = along ? Math.min(width - 1, Math.max(0, x + off)) : x;
            const sy = along ? y : Math.min(height - 1, Math.max(0, y + off));
            sum += from[3 * (sy * width + sx) + c] as number;
          }
          to[3 * (y * width + x) + c] = sum / (radius + 1);
        }
      }
    }
    from = to;
  }
  return { width, height, data: Uint8Array.from(from, Math.round) };
}
