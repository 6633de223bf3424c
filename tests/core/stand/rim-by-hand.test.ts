import { describe, expect, it } from 'vitest';
import type { Pot } from '../../../core/canopy/found-plant.ts';
import { axisFromPot, rimWidthPx } from '../../../core/stand/axis.ts';
import { potByHand } from '../../../core/stand/rim-by-hand.ts';

const FOUND: Pot = {
  rimLeftPx: [100, 300],
  rimRightPx: [300, 300],
  rim: { centrePx: [200, 300], halfWidthPx: 100, halfHeightPx: 20, heightSeen: true },
  rimDoubtPx: 12,
  rimTaper: 0.1,
};

describe('a rim set by hand', () => {
  it('takes the place of the one found, and the axis goes through its middle', () => {
    const pot = potByHand(FOUND, { leftPx: [140, 320], rightPx: [300, 324] });
    expect(axisFromPot(pot)).toEqual({ xPx: 220, rimYPx: 322 });
    expect(rimWidthPx(pot)).toBeCloseTo(Math.hypot(160, 4), 12);
  });

  it('keeps how far the rim opens, in proportion', () => {
    const pot = potByHand(FOUND, { leftPx: [150, 300], rightPx: [250, 300] });
    expect(pot.rim.halfHeightPx).toBeCloseTo(10, 12);
    expect(pot.rim.heightSeen).toBe(true);
  });

  it('stands where no pot was found, with the usual opening', () => {
    const pot = potByHand(null, { leftPx: [150, 300], rightPx: [250, 300] });
    expect(pot.rim.halfHeightPx).toBeCloseTo(9, 12);
    expect(pot.rim.heightSeen).toBe(false);
  });

  it('refuses two ends that are one', () => {
    expect(() => potByHand(FOUND, { leftPx: [1, 1], rightPx: [1, 1] })).toThrow(
      'Expected two ends of the rim that lie apart',
    );
  });
});
