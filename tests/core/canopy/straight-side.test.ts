import { describe, expect, it } from 'vitest';
import type { SidePoint } from '../../../core/canopy/pot-sides.ts';
import { straightSides } from '../../../core/canopy/straight-side.ts';

/** A clay pot's side: a band 60 px wide at row 0 that narrows by 0.08 a row, and from row 24 a body that stands 5 px back. */
const sideAt = (y: number) => (y < 24 ? 60 - 0.08 * y : 55 - 0.19 * y);
const shownFrom = (top: number): SidePoint[] =>
  Array.from({ length: 90 - top }, (_, k) => ({ y: top + k + 0.5, out: sideAt(top + k + 0.5) }));
const REACH = 18;

describe('a pot’s side', () => {
  it('is the line through what shows below the row', () => {
    const { half, taper } = straightSides(shownFrom(0), REACH)(0) ?? { half: 0, taper: 0 };
    expect(half).toBeCloseTo(sideAt(0.5), 6);
    expect(taper).toBeCloseTo(0.08, 6);
  });

  it('is drawn on upward under leaves from the topmost rows, not across the step below the band', () => {
    // A line through band and body alike would be 0.4 steep and 8 px too wide at the rim.
    const { half } = straightSides(shownFrom(14), REACH)(0) ?? { half: 0 };
    expect(Math.abs(half - 60)).toBeLessThan(1);
  });

  it('is never drawn on steeper than pots are', () => {
    const steep = shownFrom(14).map(({ y, out }) => ({ y, out: out - 0.6 * Math.min(y - 14, 8) }));
    const line = straightSides(steep, REACH)(0);
    expect(line?.taper).toBeLessThanOrEqual(0.35);
  });

  it('is not known where no side shows', () => {
    expect(straightSides(shownFrom(87), REACH)(0)).toBeNull();
    expect(straightSides(shownFrom(0), REACH)(95)).toBeNull();
  });
});
