import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, day, daysBetween } from '../../../core/day/day.ts';
import { bloomBegins, bloomPicture, chanceInBloom } from '../../../core/season/bloom-likely.ts';
import { chanceLate, lastStop } from '../../../core/season/last-stop.ts';
import { effectOfStop } from '../../../core/season/stop-effect.ts';

const SHOW = day('2026-08-13');
/** The worked example's: mean 64.8 days, its 90 % point 70.877. */
const BELIEF = { mean: 64.8, count: 5, shape: 4.5, rate: 72.4 };
const TEN = { showDay: SHOW, acceptedLate: 0.1, windowDays: 7 };

describe('the day of the last stop', () => {
  it('is the worked example’s: 71 days before the show', () => {
    const stop = lastStop(BELIEF, TEN);
    expect(stop).toMatchObject({ daysBeforeShow: 71, lastDay: '2026-06-03', fromDay: '2026-05-28' });
  });

  it('is the latest at which the chance of being late is accepted, whatever is believed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 40, max: 180, noNaN: true }),
        fc.double({ min: 5, max: 900, noNaN: true }),
        fc.double({ min: 0.02, max: 0.5, noNaN: true }),
        (mean, rate, acceptedLate) => {
          const belief = { mean, count: 2, shape: 3, rate };
          const { lastDay, chanceLate: said } = lastStop(belief, { ...TEN, acceptedLate });
          expect(said).toBeLessThanOrEqual(acceptedLate + 1e-9);
          expect(chanceLate(belief, addDays(lastDay, 1), SHOW)).toBeGreaterThan(acceptedLate);
        },
      ),
      { numRuns: 200, seed: 21 },
    );
  });

  it('comes earlier, the less may be late and the less is known', () => {
    const days = (acceptedLate: number, rate = 72.4) =>
      lastStop({ ...BELIEF, rate }, { ...TEN, acceptedLate }).daysBeforeShow;
    expect(days(0.02)).toBeGreaterThan(days(0.1));
    expect(days(0.1)).toBeGreaterThan(days(0.3));
    expect(days(0.1, 300)).toBeGreaterThan(days(0.1));
  });

  it('says what it wants', () => {
    expect(() => lastStop(BELIEF, { ...TEN, acceptedLate: 0.9 })).toThrow(
      'Expected a share above 0 and at most 0.5 for acceptedLate but received 0.9',
    );
  });
});

describe('how likely it is in bloom', () => {
  const stop = day('2026-06-03');
  const picture = bloomPicture(BELIEF, stop, 14);

  it('adds up over the calendar to the days that bloom lasts', () => {
    const sum = picture.reduce((total, { chance }) => total + chance, 0);
    // Days under 1 % are not drawn.
    expect(sum).toBeGreaterThan(13.8);
    expect(sum).toBeLessThan(14.01);
  });

  it('is drawn day after day without a gap, rises once and falls once', () => {
    picture.slice(1).forEach(({ day: next }, k) => {
      expect(daysBetween(picture[k]?.day as typeof stop, next)).toBe(1);
    });
    const best = Math.max(...picture.map(({ chance }) => chance));
    const at = picture.findIndex(({ chance }) => chance === best);
    picture.forEach(({ chance }, k) => {
      const before = picture[k - 1]?.chance;
      if (before !== undefined && k <= at) expect(chance).toBeGreaterThanOrEqual(before - 1e-12);
      if (before !== undefined && k > at + 1) expect(chance).toBeLessThanOrEqual(before + 1e-12);
    });
  });

  it('shares a day out between late, in bloom and over', () => {
    const late = chanceLate(BELIEF, stop, SHOW);
    const over = 1 - chanceLate(BELIEF, stop, addDays(SHOW, -14));
    expect(late + chanceInBloom(BELIEF, stop, 14, SHOW) + over).toBeCloseTo(1, 12);
  });
});

describe('a stop on another day than planned', () => {
  const effect = (stopDay: string) =>
    effectOfStop({ stopDay: day(stopDay), depth: 'tip', showDay: SHOW }, BELIEF, 14);

  it('nine days late is told with its chance and the days of bloom', () => {
    // 62 days are left: t = (62.5 − 64.8) ÷ 4.394 = −0.523, below which Student's t of 9 degrees lies in 30.7 %.
    expect(effect('2026-06-12').chanceLate).toBeCloseTo(1 - 0.307, 2);
    expect(effect('2026-06-12').words).toBe(
      'The chance of being late is 69 %; full bloom begins 8 August 2026 to 24 August 2026, nine times in ten.',
    );
  });

  it('far too early says that the bloom is over before the show', () => {
    expect(effect('2026-05-01').words).toContain('most likely over before the show');
    expect(effect('2026-05-01').words).toContain('The chance of being late is under 1 %');
  });

  it('moves bloom by as many days as the stop', () => {
    const [from, to] = bloomBegins(BELIEF, day('2026-06-03'), 0.9);
    expect(bloomBegins(BELIEF, day('2026-06-12'), 0.9)).toEqual([addDays(from, 9), addDays(to, 9)]);
  });
});
