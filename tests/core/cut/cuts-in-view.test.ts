import { describe, expect, it } from 'vitest';
import { cutsInView, type PlacedCut } from '../../../core/cut/cuts-in-view.ts';
import { sightOf } from '../../../core/turned/sight-lines.ts';
import type { PlantPoint } from '../../../core/turned/turned-view.ts';
import { ball, photograph } from '../turned/leafy-plant.ts';

const CENTRE: PlantPoint = [0, 0, 90];
/** Points to azimuth 90 on the height of the ball's middle; 40 mm outside the ball of 120 mm. */
const CUT: PlacedCut = { id: 'a', tipMm: [0, 160, 90], cutMm: [0, 120, 90] };

function seen(turnDeg: number, camera: { distanceMm: number; heightMm: number } | null) {
  const view = photograph(ball(120, CENTRE), { turnDeg, camera, mmPerPx: 1 });
  const [cut] = cutsInView({ view, sight: sightOf(view, 'mm', camera, 120) }, [CUT], CENTRE);
  if (cut === undefined) throw new Error('A placed cut shows in every view.');
  const across = (px: number) => px - view.axisXPx;
  return { tip: across(cut.tipPx[0]), mark: across(cut.cutPx[0]), ...cut.ball, rimYPx: view.rimYPx };
}

describe('a cut placed on the plant', () => {
  it('shows at the right of a view that faces the mark, its mark on the ball’s outline', () => {
    const { tip, mark, radiusPx, centrePx, rimYPx } = seen(0, null);
    expect([tip, mark, radiusPx]).toEqual([160, 120, 120]);
    expect(centrePx[1]).toBeCloseTo(rimYPx - 90);
  });

  it('shows at the left from behind, and before the ball from its own side', () => {
    expect(seen(180, null).tip).toBeCloseTo(-160);
    expect(seen(90, null).tip).toBeCloseTo(0);
  });

  it('is seen by a near camera with a ball a little larger than it is', () => {
    const { radiusPx, mark } = seen(0, { distanceMm: 1200, heightMm: 90 });
    // A sphere's outline is the cone that touches it: R ÷ √(1 − (R ÷ D)²).
    expect(radiusPx).toBeCloseTo(120 / Math.sqrt(1 - 0.1 ** 2), 6);
    expect(mark).toBeCloseTo(120);
  });
});
