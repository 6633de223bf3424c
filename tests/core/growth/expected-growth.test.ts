import { describe, expect, it } from 'vitest';
import {
  expectedGrowth,
  type GrowthLesson,
  GUESS,
  lessonOf,
  SPREADS,
} from '../../../core/growth/expected-growth.ts';
import { orthogonalTriangle, solveTriangle } from '../../../core/growth/orthogonal-triangle.ts';

/** A stretch that grew by so much in half so many weeks, told to 10 %. */
function lesson(growthMm: number, weeksToHalf: number, sd = 0.1): GrowthLesson {
  return {
    logGrowthMm: { mean: Math.log(growthMm), sd },
    logWeeksToHalf: { mean: Math.log(weeksToHalf), sd },
  };
}

const growthIn = (expected: ReturnType<typeof expectedGrowth>) => Math.exp(expected.logGrowthMm.mean);

describe('the growth to expect', () => {
  it('is a guess without any records, in shares of the ball', () => {
    const small = expectedGrowth(50);
    expect(small.restsOn).toBe('guess');
    expect(growthIn(small)).toBeCloseTo(50 * GUESS.growthShare, 10);
    expect(growthIn(expectedGrowth(200))).toBeCloseTo(200 * GUESS.growthShare, 10);
    expect(small.logGrowthMm.sd).toBeCloseTo(Math.hypot(...Object.values(SPREADS.logGrowthMm)), 10);
  });

  it('goes by the plant first, then by its variety', () => {
    const variety = [[lesson(40, 3)], [lesson(40, 3)], [lesson(40, 3)]];
    const byVariety = expectedGrowth(100, [], variety);
    expect(byVariety.restsOn).toBe('variety');
    expect(growthIn(byVariety)).toBeGreaterThan(40);
    expect(growthIn(byVariety)).toBeLessThan(50);
    const byBoth = expectedGrowth(100, [lesson(90, 6), lesson(90, 6)], variety);
    expect(byBoth.restsOn).toBe('plant');
    // Nearer to its own 90 than to the variety's 40.
    expect(growthIn(byBoth)).toBeGreaterThan(Math.sqrt(40 * 90));
  });

  it('becomes surer with each record, but never surer than stretches differ', () => {
    const sds = [0, 1, 2, 20].map(
      (stretches) => expectedGrowth(100, Array(stretches).fill(lesson(60, 5))).logGrowthMm.sd,
    );
    expect(sds).toEqual([...sds].sort((a, b) => b - a));
    expect(sds.at(-1)).toBeGreaterThan(SPREADS.logGrowthMm.stretch);
  });

  it('is what the joint bell curve of all stretches says', () => {
    // All stretches as one vector: the same variety shares variety², the same plant plant² more, the same stretch the rest.
    const own = [lesson(90, 6), lesson(70, 4, 0.3)];
    const mates = [[lesson(40, 3), lesson(50, 3.5, 0.2)], [lesson(120, 8)]];
    const { variety, plant, stretch } = SPREADS.logGrowthMm;
    const records = [
      ...own.map((record) => ({ plantNumber: 0, record })),
      ...mates.flatMap((list, k) => list.map((record) => ({ plantNumber: k + 1, record }))),
    ];
    const guessed = Math.log(100 * GUESS.growthShare);
    const shared = (one: number, other: number) => variety ** 2 + (one === other ? plant ** 2 : 0);
    const covariance = records.map((one, i) =>
      records.map(
        (other, j) =>
          shared(one.plantNumber, other.plantNumber) +
          (i === j ? stretch ** 2 + (one.record.logGrowthMm?.sd ?? 0) ** 2 : 0),
      ),
    );
    const toNext = records.map(({ plantNumber }) => shared(plantNumber, 0));
    const solve = (right: number[]) => solveTriangle(orthogonalTriangle(covariance, right)) as number[];
    const weights = solve(toNext);
    const mean = records.reduce(
      (sum, { record }, k) => sum + (weights[k] as number) * ((record.logGrowthMm?.mean ?? 0) - guessed),
      guessed,
    );
    const variance =
      variety ** 2 +
      plant ** 2 +
      stretch ** 2 -
      toNext.reduce((sum, value, k) => sum + value * (weights[k] as number), 0);
    const found = expectedGrowth(100, own, mates).logGrowthMm;
    expect(found.mean).toBeCloseTo(mean, 10);
    expect(found.sd).toBeCloseTo(Math.sqrt(variance), 10);
  });

  it('leaves out a stretch that taught nothing', () => {
    const nothing: GrowthLesson = { logGrowthMm: null, logWeeksToHalf: null };
    expect(expectedGrowth(100, [nothing], [[nothing]])).toEqual(expectedGrowth(100));
  });

  it('wants a ball', () => {
    expect(() => expectedGrowth(0)).toThrow('Expected a positive number for radiusMm but received 0');
  });
});

describe('a lesson', () => {
  it('is what was learnt without what was held before', () => {
    // A bell at 4 ± 0.5 joined with one at 5 ± 0.5 gives 4.5 ± 0.354.
    const learnt = lessonOf({ mean: 4, sd: 0.5 }, { mean: 4.5, sd: 0.5 / Math.SQRT2 });
    expect(learnt?.mean).toBeCloseTo(5, 10);
    expect(learnt?.sd).toBeCloseTo(0.5, 10);
  });

  it('is none where the doubt is hardly smaller than before', () => {
    expect(lessonOf({ mean: 4, sd: 0.5 }, { mean: 4.1, sd: 0.49 })).toBeNull();
    expect(lessonOf({ mean: 4, sd: 0.5 }, { mean: 4.1, sd: 0.6 })).toBeNull();
  });
});
