import { describe, expect, it } from 'vitest';
import type { Pot } from '../../../core/canopy/found-plant.ts';
import { fitBall } from '../../../core/measures/ball.ts';
import { rimVariances } from '../../../core/measures/rim-doubt.ts';
import { roundnessOf } from '../../../core/measures/roundness.ts';
import type { Mask } from '../../../core/raster/raster.ts';
import { readSilhouette } from '../../../core/silhouette/silhouette.ts';
import { disc, drawMask, rim } from '../drawn-shapes.ts';

/** A ball, flat below: the lower it is looked at past the rim's ends, the less round it is. */
const FLAT = drawMask(340, 340, (x, y) => disc([170, 170], 100)(x, y) && y < 225);
const WHOLE = drawMask(340, 340, disc([170, 170], 100));
const POT = rim(170, 235, 70);

function read(mask: Mask) {
  const silhouette = readSilhouette(mask);
  if (silhouette === null) throw new Error('The drawing is empty.');
  return silhouette;
}

const roundnessWith = (pot: Pot) => {
  const ball = fitBall(read(FLAT), pot);
  return (ball && roundnessOf(ball.form)?.score) ?? Number.NaN;
};

describe('the doubt of the rim', () => {
  it('adds nothing without a pot', () => {
    expect(rimVariances(read(FLAT), null, 100)).toEqual({
      roundness: 0,
      symmetry: 0,
      lopsidedness: 0,
      radiusPx: 0,
    });
  });

  it('adds what the scores change when the rim is moved by one standard deviation', () => {
    // 4.5 % of 140 px up and down; a rim of no doubtful width is not moved apart.
    const moved = [-6.3, 6.3].map((down) => roundnessWith(rim(170, 235 + down, 70)) - roundnessWith(POT));
    const expected = moved.reduce((sum, change) => sum + change ** 2 / 2, 0);
    const { roundness } = rimVariances(read(FLAT), POT, 100);
    expect(expected).toBeGreaterThan(1);
    // A quarter of the directions: the arc ends elsewhere by up to a degree.
    expect(Math.sqrt(roundness / expected)).toBeGreaterThan(0.8);
    expect(Math.sqrt(roundness / expected)).toBeLessThan(1.25);
  });

  it('adds less where the opening was seen, and more where an end is hidden', () => {
    const at = (told: Partial<Pot>) => rimVariances(read(FLAT), { ...POT, ...told }, 100).roundness;
    expect(at({ rim: { ...POT.rim, heightSeen: true } })).toBeLessThan(at({}));
    expect(at({ rimDoubtPx: 12 })).toBeGreaterThan(at({}));
  });

  it('hardly touches a ball that is round all the way down', () => {
    // 0.3 points: what the pixels of a disc of radius 100 hide.
    expect(Math.sqrt(rimVariances(read(WHOLE), POT, 100).roundness)).toBeLessThan(0.3);
  });

  it('leaves lopsidedness to the doubt of the axis', () => {
    expect(Math.sqrt(rimVariances(read(FLAT), { ...POT, rimDoubtPx: 12 }, 100).lopsidedness)).toBeLessThan(
      0.1,
    );
  });
});
