import { describe, expect, it } from 'vitest';
import { axisFromPot, axisUncertaintyPx, rimHeightDoubtPx, rimWidthPx } from '../../../core/stand/axis.ts';
import { scaleDoubt, scaleFromRim } from '../../../core/stand/scale.ts';
import { rim } from '../drawn-shapes.ts';

describe('the plant axis', () => {
  it('stands in the middle of the rim, at its middle height', () => {
    expect(axisFromPot({ rimLeftPx: [742, 871], rimRightPx: [858, 873] })).toEqual({ xPx: 800, rimYPx: 872 });
  });

  it('is less sure for a wide pot', () => {
    expect(axisUncertaintyPx(rim(0, 0, 50))).toBeCloseTo(0.2, 12);
  });

  it('is less sure where leaves hide an end of the rim', () => {
    expect(axisUncertaintyPx({ ...rim(0, 0, 50), rimDoubtPx: 0.6 })).toBeCloseTo(0.2, 12);
    expect(axisUncertaintyPx({ ...rim(0, 0, 50), rimDoubtPx: 6 })).toBeCloseTo(1.5, 12);
  });
});

describe('the rim’s height', () => {
  it('is surer where its opening was seen', () => {
    const pot = rim(0, 0, 50);
    expect(rimHeightDoubtPx(pot)).toBeCloseTo(4.5, 12);
    expect(rimHeightDoubtPx({ ...pot, rim: { ...pot.rim, heightSeen: true } })).toBeCloseTo(1, 12);
  });
});

describe('the scale', () => {
  it('is the rim’s mm over its px, along the rim', () => {
    expect(rimWidthPx({ rimLeftPx: [0, 0], rimRightPx: [30, 40] })).toBe(50);
    expect(scaleFromRim({ rimLeftPx: [0, 0], rimRightPx: [30, 40] }, 130)).toBeCloseTo(2.6, 12);
  });

  it('is as doubtful as the rim’s width', () => {
    expect(scaleDoubt({ ...rim(0, 0, 50), rimDoubtPx: 2 })).toBeCloseTo(0.02, 12);
    // Hidden, the rim's row is good to 4.5 % of its 100 px; sides that taper by 0.2 on each side make 1.8 px of it.
    expect(scaleDoubt({ ...rim(0, 0, 50), rimTaper: 0.2 })).toBeCloseTo(0.018, 12);
  });

  it('is not known for a rim without width', () => {
    expect(scaleFromRim(rim(5, 5, 0), 130)).toBeNull();
  });
});
