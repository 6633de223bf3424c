import { describe, expect, it } from 'vitest';
import { afterCuts } from '../../../core/cut/after-cuts.ts';
import { LOBE, type SeenCut } from '../../../core/cut/cut-away.ts';
import type { PointPx } from '../../../core/raster/raster.ts';
import { readSilhouette, type Silhouette } from '../../../core/silhouette/silhouette.ts';
import { drawMask } from '../drawn-shapes.ts';

const MIDDLE: PointPx = [200, 200];
const RADIUS = 120;
/** The rim lies below the disc, so that it hides little. */
const RIM = { rimLeftPx: [150, 310] as PointPx, rimRightPx: [250, 310] as PointPx };

/** A disc with a bar that points to the right and stands `excessPx` out. */
function plant(excessPx: number, side: 1 | -1 = 1) {
  const mask = drawMask(400, 400, (x, y) => {
    const [across, up] = [side * (x - MIDDLE[0]), MIDDLE[1] - y];
    const bar = across > 0 && across <= RADIUS + excessPx && Math.abs(up) <= 18;
    return bar || Math.hypot(across, up) <= RADIUS;
  });
  return { silhouette: readSilhouette(mask) as Silhouette, rim: RIM };
}

function cut(excessPx: number, side: 1 | -1 = 1): SeenCut {
  const tipPx: PointPx = [MIDDLE[0] + side * (RADIUS + excessPx), MIDDLE[1]];
  return { id: 'bar', tipPx, ball: { centrePx: MIDDLE, radiusPx: RADIUS } };
}

const CHOSEN = new Set(['bar']);

describe('the scores after a cut', () => {
  it('are those of the disc that is left', () => {
    const { change, silhouette } = afterCuts(plant(50), [cut(50)], CHOSEN);
    const disc = afterCuts(plant(50), [cut(50)], new Set());
    // The disc, and of the bar's 36 px what the leaves below the cut still cover.
    const left = Math.PI * RADIUS ** 2 + 36 * LOBE.leavesLeft * RADIUS;
    expect(Math.abs((silhouette?.areaPx ?? 0) - left)).toBeLessThan(50);
    // The bar's tip lies 170 from the middle and the form filter keeps a part of it.
    expect(change.roundness).toBeGreaterThan(5);
    expect(change.symmetry).toBeGreaterThan(1);
    expect(disc.change).toEqual({ roundness: 0, symmetry: 0, lopsidedness: 0 });
  });

  it('mirror with the plant', () => {
    const right = afterCuts(plant(50), [cut(50)], CHOSEN).change;
    const left = afterCuts(plant(50, -1), [cut(50, -1)], CHOSEN).change;
    expect(right.lopsidedness).toBeLessThan(-1);
    expect(left.lopsidedness).toBeCloseTo(-(right.lopsidedness as number), 1);
    expect(left.roundness).toBeCloseTo(right.roundness as number, 0);
    expect(left.symmetry).toBeCloseTo(right.symmetry as number, 1);
  });

  it('are not told about an axis that no pot shows', () => {
    const { change } = afterCuts({ ...plant(50), rim: null }, [cut(50)], CHOSEN);
    expect(change.lopsidedness).toBeNull();
    expect(change.roundness).toBeGreaterThan(5);
  });

  it('do not change for a cut that this picture does not show', () => {
    const hidden: SeenCut = { ...cut(50), tipPx: [MIDDLE[0] + 40, MIDDLE[1]] };
    const { change, shown } = afterCuts(plant(50), [hidden], CHOSEN);
    expect([change.roundness, change.symmetry, change.lopsidedness, shown.size]).toEqual([0, 0, 0, 0]);
  });
});
