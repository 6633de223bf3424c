import { describe, expect, it } from 'vitest';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { editableFigures, faultOfOwnFigure } from '../../../core/season/own-defaults.ts';
import { figureWords, readFigure, restsOnWords } from '../../../web/src/season/figures/figure-words.ts';

const FIGURES = editableFigures(DEFAULT_STOPS).map((figure) => ({ ...figure, isOwn: false }));
const figureOf = (key: string) => {
  const found = FIGURES.find((figure) => figure.key === key);
  if (!found) throw new TypeError(`Expected a figure for ${key}`);
  return found;
};

describe('a figure of the table', () => {
  it('is told with its unit, a share in hundredths', () => {
    expect(figureWords(figureOf('fuchsia-single.tip.meanDays'))).toBe('60 days');
    expect(figureWords(figureOf('acceptedLate'))).toBe('10 %');
    expect(figureWords(figureOf('countsAs'))).toBe('1 record');
    expect(figureWords(figureOf('angel.deep.meanDays'))).toBe('not known');
  });

  it('is read as it is told', () => {
    expect(readFigure('62,5 days', figureOf('fuchsia-single.tip.meanDays'))).toEqual({
      ok: true,
      value: 62.5,
    });
    expect(readFigure('5 %', figureOf('acceptedLate'))).toEqual({ ok: true, value: 0.05 });
  });

  it.each([
    [
      '',
      'fuchsia-single.tip.meanDays',
      'Days from a tip stop to full bloom: give a number from 14 to 400 days.',
    ],
    ['60', 'acceptedLate', 'Share of plants that may be late: give a number from 1 to 50 %.'],
    ['7.5', 'windowDays', 'Days of a window for a stop: give a whole number from 1 to 28 days.'],
  ])('of %j for %s is sent back with what to give', (typed, key, fault) => {
    expect(readFigure(typed, figureOf(key))).toEqual({ ok: false, fault });
  });

  it('that the screen takes the server takes too, at both ends of every range', () => {
    for (const figure of FIGURES) {
      for (const end of [figure.least, figure.most]) {
        const read = readFigure(String(figure.unit === 'share' ? 100 * end : end), figure);
        if (!read.ok) throw new TypeError(read.fault);
        expect(faultOfOwnFigure(DEFAULT_STOPS, figure.key, read.value)).toBeNull();
      }
    }
  });

  it('says its standing once', () => {
    for (const { figure } of FIGURES) {
      if (figure === null) continue;
      const words = restsOnWords(figure).toLowerCase();
      expect(words).toContain(
        {
          published: 'published',
          'common-practice': 'common practice',
          'own-choice': 'own choice',
          grower: 'own',
        }[figure.standing],
      );
    }
  });
});
