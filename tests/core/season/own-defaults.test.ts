import { describe, expect, it } from 'vitest';
import { PLANT_KINDS } from '../../../core/plant.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { STANDINGS } from '../../../core/season/figure.ts';
import { editableFigures, faultOfOwnFigure, withOwnFigures } from '../../../core/season/own-defaults.ts';

describe('the table of defaults', () => {
  const figures = editableFigures(DEFAULT_STOPS);

  it('gives every figure a key of its own, a standing and words, and lies within its own limits', () => {
    expect(new Set(figures.map(({ key }) => key)).size).toBe(figures.length);
    for (const { key, figure } of figures) {
      if (figure === null) continue;
      expect(STANDINGS).toContain(figure.standing);
      expect(figure.words).toMatch(/^[A-Z].*\.$/);
      expect(faultOfOwnFigure(DEFAULT_STOPS, key, figure.value)).toBeNull();
    }
  });

  it('says “common practice, no source” or “own choice” wherever nothing is printed', () => {
    for (const { figure } of figures) {
      if (figure?.standing === 'common-practice')
        expect(figure.words).toContain('common practice, no source');
      if (figure?.standing === 'own-choice') expect(figure.words).toContain('our own choice');
      if (figure?.standing === 'published')
        expect(figure.words).toMatch(/Garden News|fuchsiaclark|newsletter/);
    }
  });

  it('ends every chain with the last stop, and only there', () => {
    for (const kind of PLANT_KINDS) {
      const { chain } = DEFAULT_STOPS.kinds[kind];
      expect(chain.map(({ role }) => role === 'last')).toEqual(chain.map((_, k) => k === chain.length - 1));
      expect(chain.map(({ daysToNext }) => daysToNext === null)).toEqual(
        chain.map((_, k) => k === chain.length - 1),
      );
    }
  });
});

describe('own figures laid over it', () => {
  it('change what they name and nothing else', () => {
    const own = withOwnFigures(DEFAULT_STOPS, { 'regal.tip.meanDays': 115, 'zonal.first.daysToNext': 35 });
    const before = editableFigures(DEFAULT_STOPS);
    editableFigures(own).forEach((figure, k) => {
      if (figure.key === 'regal.tip.meanDays') {
        expect(figure.figure).toEqual({
          value: 115,
          standing: 'grower',
          words: 'Your own figure. The default was 122.5.',
        });
      } else if (figure.key === 'zonal.first.daysToNext') expect(figure.figure?.value).toBe(35);
      else expect(figure).toEqual(before[k]);
    });
    expect(DEFAULT_STOPS.kinds.regal.stops[1]?.meanDays?.value).toBe(122.5);
  });

  it('fill in what is not known', () => {
    const own = withOwnFigures(DEFAULT_STOPS, { 'zonal.deep.meanDays': 140 });
    expect(own.kinds.zonal.stops[0]?.meanDays?.words).toBe('Your own figure. Before, none was known.');
  });

  it.each([
    ['regal.tip.meanDays', 700, 'Give days from a tip stop to full bloom as a number from 14 to 400.'],
    ['regal.bloomLastsDays', 9.5, 'Give days that full bloom lasts as a whole number from 1 to 120.'],
    ['acceptedLate', 0, 'Give share of plants that may be late as a number from 0.01 to 0.5.'],
    ['acceptedLate', Number.NaN, 'Give share of plants that may be late as a number from 0.01 to 0.5.'],
    ['tulip.tip.meanDays', 60, 'There is no such figure in the table.'],
  ])('that do not fit are told what to give: %s as %d', (key, value, fault) => {
    expect(faultOfOwnFigure(DEFAULT_STOPS, key, value)).toBe(fault);
    expect(() => withOwnFigures(DEFAULT_STOPS, { [key]: value })).toThrow(RangeError);
  });
});
