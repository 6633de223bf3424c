import { describe, expect, it } from 'vitest';
import { LEAF_TONES, type LeafTone, leafTones } from '../../sample-images/render/leaf-tones.ts';
import { renderView, type ViewOptions } from '../../sample-images/render/render-view.ts';
import { PLANT_SEASONS } from '../../sample-images/render/season/plants.ts';
import type { PlantSeason } from '../../sample-images/render/season/season-spec.ts';
import { SMALL, sittingView } from '../../sample-images/render/season/sitting-view.ts';

const VIEW = sittingView(PLANT_SEASONS[0] as PlantSeason, 4, 0, SMALL, null);
const AILING = { seed: 3, yellowShare: 0, lowest: 1, brownShare: 0, brownEdge: 0.2 };

function shareOf(tone: LeafTone, options: ViewOptions): number {
  const { data } = leafTones(options);
  const canopy = data.filter((one) => one !== 0).length;
  return data.filter((one) => one === LEAF_TONES.indexOf(tone)).length / canopy;
}

describe('the true tones of a rendered plant', { timeout: 60_000 }, () => {
  it('are green throughout when nothing ails it', () => {
    expect(shareOf('green', VIEW)).toBe(1);
  });

  it('cover the canopy of the photo', () => {
    const { data } = leafTones(VIEW);
    const { canopy } = renderView(VIEW);
    const unlike = canopy.data.filter((inside, at) => (inside === 1) !== (data[at] !== 0)).length;
    // One sample in the middle of a px against half of four.
    expect(unlike).toBeLessThan(0.06 * canopy.data.filter((one) => one === 1).length);
  });

  it('turn yellow from the bottom up', () => {
    const ailing = { ...VIEW, ailing: { ...AILING, yellowShare: 0.3 } };
    expect(shareOf('yellow', ailing)).toBeGreaterThan(0.03);
    const { width, height, data } = leafTones(ailing);
    const rowsOf = (tone: LeafTone) =>
      Array.from(data).flatMap((one, at) => (LEAF_TONES[one] === tone ? [Math.floor(at / width)] : []));
    const mean = (rows: readonly number[]) => rows.reduce((sum, row) => sum + row, 0) / rows.length;
    expect(mean(rowsOf('yellow')) - mean(rowsOf('green'))).toBeGreaterThan(0.05 * height);
  });

  it('have brown margins on as many leaves as asked', () => {
    const few = shareOf('brown', { ...VIEW, ailing: { ...AILING, brownShare: 0.3 } });
    const many = shareOf('brown', { ...VIEW, ailing: { ...AILING, brownShare: 0.9 } });
    expect(few).toBeGreaterThan(0.02);
    expect(many).toBeGreaterThan(2 * few);
  });
});
