import { afterEach, describe, expect, it } from 'vitest';
import { inInches } from '../../../web/src/languages/lengths.ts';
import { speak } from '../../../web/src/languages/speaker.ts';
import { spokenFigure } from '../../../web/src/words/spoken-figure.ts';

afterEach(() => speak(null));

describe('a figure whose unit stands apart', () => {
  it('is given as it is in metric', () =>
    expect(spokenFigure({ value: '262', plusMinus: '±11', unit: 'mm' })).toEqual({
      value: '262',
      plusMinus: '±11',
      unit: 'mm',
    }));

  it('is given in inches', () => {
    speak(inInches);
    expect(spokenFigure({ value: '262', plusMinus: '±11', unit: 'mm' })).toEqual({
      value: '10.3',
      plusMinus: '±0.43',
      unit: 'in',
    });
    expect(spokenFigure({ value: '523', plusMinus: null, unit: 'cm²' })).toEqual({
      value: '81.1',
      plusMinus: null,
      unit: 'in²',
    });
    expect(spokenFigure({ value: '84', plusMinus: '±4.1', unit: 'of 100' })).toEqual({
      value: '84',
      plusMinus: '±4.1',
      unit: 'of 100',
    });
  });
});
