import { describe, expect, it } from 'vitest';
import { chanceBelow, meanInterval, updated } from '../../core/season/normal-gamma.ts';
import { normalTail } from '../../core/trend/normal-tail.ts';

const BEFORE = { mean: 60, count: 2, shape: 3, rate: 30 };
const SEEN = [66, 70, 68];

/**
 * The same belief without any closed form: a grid of means and precisions, each as likely as the prior's two densities and the normal
 * densities of what was seen say (DeGroot, 1970: normal given the precision, gamma for the precision).
 */
function gridBelief() {
  const points: { mean: number; sd: number; weight: number }[] = [];
  let total = 0;
  for (let precision = 0.0005; precision < 0.6; precision += 0.001) {
    for (let mean = 45; mean < 85; mean += 0.1) {
      const gamma = (BEFORE.shape - 1) * Math.log(precision) - BEFORE.rate * precision;
      const ofMean = 0.5 * Math.log(precision) - (BEFORE.count * precision * (mean - BEFORE.mean) ** 2) / 2;
      const ofSeen = SEEN.reduce(
        (sum, value) => sum + 0.5 * Math.log(precision) - (precision * (value - mean) ** 2) / 2,
        0,
      );
      const weight = Math.exp(gamma + ofMean + ofSeen);
      total += weight;
      points.push({ mean, sd: precision ** -0.5, weight });
    }
  }
  return points.map((point) => ({ ...point, weight: point.weight / total }));
}

describe('the belief about days to bloom, held against a grid of all means and scatters', () => {
  const grid = gridBelief();
  const learned = updated(BEFORE, SEEN);

  it('has the grid’s mean', () => {
    expect(learned.mean).toBeCloseTo(
      grid.reduce((sum, { mean, weight }) => sum + weight * mean, 0),
      2,
    );
  });

  it.each([58, 62, 65, 68, 71, 76])('foresees the next value below %i as often', (value) => {
    const share = grid.reduce(
      (sum, { mean, sd, weight }) => sum + weight * (1 - normalTail((value - mean) / sd)),
      0,
    );
    expect(chanceBelow(learned, value)).toBeCloseTo(share, 3);
  });

  it('holds the true mean in its 90 % interval as often', () => {
    const [low, high] = meanInterval(learned, 0.9);
    const held = grid.reduce((sum, { mean, weight }) => sum + (mean >= low && mean <= high ? weight : 0), 0);
    // The grid's means stand 0.1 day apart.
    expect(held).toBeCloseTo(0.9, 1);
    expect(Math.abs(held - 0.9)).toBeLessThan(0.02);
  });
});
