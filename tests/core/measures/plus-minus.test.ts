import { describe, expect, it } from 'vitest';
import { fitBall } from '../../../core/measures/ball.ts';
import { type Doubts, type PlusMinus, plusMinusOf } from '../../../core/measures/plus-minus.ts';
import { readSilhouette } from '../../../core/silhouette/silhouette.ts';
import { disc, drawMask, rim } from '../drawn-shapes.ts';

/** A disc of radius 100 whose middle stands 80 above its rim. */
const POT = rim(150, 230, 60);
const SILHOUETTE = readSilhouette(drawMask(300, 300, (x, y) => disc([150, 150], 100)(x, y) && y < 230));

const SURE: Doubts = { edgePx: 0, axisPx: 0, rollRad: 0 };

function plusMinus(doubts: Partial<Doubts>): PlusMinus {
  const ball = SILHOUETTE && fitBall(SILHOUETTE, POT);
  if (!SILHOUETTE || !ball) throw new Error('The drawing has no ball.');
  return plusMinusOf(SILHOUETTE, ball, { axisXPx: 150, rimYPx: 230 }, { ...SURE, ...doubts });
}

// 24 repeats fix a standard deviation to about 15 % (1 ÷ √(2·24)); the stream of noise is always the same one.
const NEAR = 0.3;
const near = (value: number, wanted: number) => Math.abs(value / wanted - 1) < NEAR;

describe('plus-minus', () => {
  it('of a sure cut-out of a clean disc is about what a px is of its radius', () => {
    const { roundness, symmetry, lopsidedness } = plusMinus({});
    for (const one of [roundness, symmetry, lopsidedness]) expect(one).toBeLessThan(1.5);
  });

  it('lets an axis in doubt into lopsidedness by its share of the radius', () => {
    // 2 px of 100 are 2 %, × 1.96.
    expect(near(plusMinus({ axisPx: 2 }).lopsidedness, 1.96 * 2)).toBe(true);
  });

  it('lets a rolled camera into lopsidedness by the height of the canopy above its rim', () => {
    // The centroid of the cut disc stands about 85 above the rim: 85 × 0.02 rad are 1.7 % of the radius, × 1.96.
    const height = 230 - (SILHOUETTE?.centroidPx[1] ?? Number.NaN);
    expect(near(plusMinus({ rollRad: 0.02 }).lopsidedness, 1.96 * 0.02 * height)).toBe(true);
  });

  it('lets neither into roundness, which has no axis', () => {
    const still = plusMinus({}).roundness;
    expect(plusMinus({ axisPx: 2 }).roundness).toBeCloseTo(still, 0);
    expect(plusMinus({ rollRad: 0.02 }).roundness).toBeCloseTo(still, 0);
  });

  it('grows with each doubt for symmetry', () => {
    const still = plusMinus({}).symmetry;
    expect(plusMinus({ axisPx: 2 }).symmetry).toBeGreaterThan(2 * still);
    expect(plusMinus({ rollRad: 0.02 }).symmetry).toBeGreaterThan(1.5 * still);
  });

  it('is the same whenever it is asked', () => {
    expect(plusMinus({ edgePx: 1 })).toEqual(plusMinus({ edgePx: 1 }));
  });
});
