import { describe, expect, it } from 'vitest';
import { readSilhouette, type Silhouette } from '../../../core/silhouette/silhouette.ts';
import { lightToBaseWords, tightnessWords } from '../../../core/vigour/compare-gaps.ts';
import { type GapPlace, type Gaps, gapsOf } from '../../../core/vigour/gaps.ts';

const SIDE = 240;
const PLACE: GapPlace = { centrePx: [120, 120], radiusPx: 80, rimYPx: 180, edgePx: 0.5 };

/** What a rule says is canopy, on a square of 240 px. */
function drawn(rule: (x: number, y: number) => boolean): Silhouette {
  const data = Uint8Array.from({ length: SIDE * SIDE }, (_, k) =>
    rule((k % SIDE) + 0.5, Math.floor(k / SIDE) + 0.5) ? 1 : 0,
  );
  return readSilhouette({ width: SIDE, height: SIDE, data }) as Silhouette;
}

const isInDisc = (x: number, y: number) => Math.hypot(x - 120, y - 120) < 80.5;
const gaps = (silhouette: Silhouette, place = PLACE) => gapsOf(silhouette, place) as Gaps;

describe('gaps', () => {
  it('are none in a full disc on its rim', () => {
    const full = gaps(drawn(isInDisc));
    expect(full.tightness).toBeGreaterThan(0.99);
    expect(full.sectors.every(({ gapFraction, isThin }) => gapFraction < 0.02 && !isThin)).toBe(true);
  });

  it('stand in the sector in which they are: a bay at the right is at 3 o’clock', () => {
    const bay = gaps(drawn((x, y) => isInDisc(x, y) && !(x > 160 && Math.abs(y - 120) < 10)));
    expect(bay.sectors.filter(({ isThin }) => isThin).map(({ clock }) => clock)).toEqual([3]);
    const mirrored = gaps(drawn((x, y) => isInDisc(x, y) && !(x < 80 && Math.abs(y - 120) < 10)));
    expect(mirrored.sectors.filter(({ isThin }) => isThin).map(({ clock }) => clock)).toEqual([9]);
  });

  it('are as large a share as was cut out', () => {
    // A quarter of every 4 × 4 px is a hole.
    const pierced = gaps(
      drawn((x, y) => isInDisc(x, y) && !(Math.floor(x) % 4 < 2 && Math.floor(y) % 4 < 2)),
    );
    expect(pierced.tightness).toBeCloseTo(0.75, 1);
    expect(pierced.sectors.some(({ isThin }) => isThin)).toBe(false);
    // The more edge there is, the less sure the share.
    expect(pierced.tightnessPlusMinus).toBeGreaterThan(gaps(drawn(isInDisc)).tightnessPlusMinus);
  });

  it('do not change with the size of the photo', () => {
    const rule = (x: number, y: number) => isInDisc(x, y) && !(x > 160 && Math.abs(y - 120) < 10);
    const large = gaps(drawn(rule));
    const small = gaps(
      drawn((x, y) => rule(2 * x, 2 * y)),
      { ...PLACE, centrePx: [60, 60], radiusPx: 40, rimYPx: 90 },
    );
    expect(small.tightness).toBeCloseTo(large.tightness, 1);
    expect(small.openBase).toBeCloseTo(large.openBase, 1);
  });

  it('tell an open base from a closed one', () => {
    const closed = gaps(drawn((x, y) => Math.abs(x - 120) < 80 && y > 40 && y < 180));
    const open = gaps(
      drawn(
        (x, y) =>
          (Math.abs(x - 120) < 80 && y > 40 && y < 130) || (Math.abs(x - 120) < 6 && y < 180 && y > 40),
      ),
    );
    expect(closed.openBase).toBeLessThan(0.01);
    expect(open.openBase).toBeGreaterThan(0.85);
    expect(lightToBaseWords(closed, open)).toMatch(/^More light reaches the base: 9\d % .*0 % before/);
    expect(lightToBaseWords(open, closed)).toMatch(/^Less light/);
    expect(lightToBaseWords(open, open)).toMatch(/^No change/);
  });

  it('are not told where nothing of the ball stands above the rim', () => {
    expect(gapsOf(drawn(isInDisc), { ...PLACE, rimYPx: 10 })).toBeNull();
  });
});

describe('tightness beside earlier plants', () => {
  it('counts those that are looser and tighter beyond its plus-minus', () => {
    const plant = { ...gaps(drawn(isInDisc)), tightness: 0.8, tightnessPlusMinus: 0.05 };
    expect(tightnessWords(plant, [0.6, 0.7, 0.82, 0.95])).toBe(
      'The canopy fills 80 % of its ball: tighter than 2 of your 4 earlier plants, about like 1, looser than 1.',
    );
    expect(tightnessWords(plant, [0.6, 0.7])).toBeNull();
  });
});
