import { describe, expect, it } from 'vitest';
import { withDecimalsOf } from '../../../web/src/languages/decimals.ts';
import { inInches } from '../../../web/src/languages/lengths.ts';
import { dayInLocale } from '../../../web/src/languages/written-days.ts';

describe('lengths in inches', () => {
  // 1 in = 25.4 mm: International Yard and Pound Agreement, 1959.
  it.each([
    ['254 mm', '10 in'],
    ['24 mm (± 2)', '0.94 in (± 0.08)'],
    ['12–14 mm', '0.47–0.55 in'],
    ['130 ± 5 mm wide', '5.1 ± 0.2 in wide'],
    ['2 cm further left', '0.79 in further left'],
    ['1.5 m from the plant', '4.9 ft from the plant'],
    ['40 cm²', '6.2 in²'],
    ['5 minutes, 3 months, 2 mmol', '5 minutes, 3 months, 2 mmol'],
    ['100 × 150 mm', '3.9 × 5.9 in'],
  ])('%s is %s', (metric, inches) => expect(inInches(metric)).toBe(inches));
});

describe('decimals', () => {
  it('take the comma where it is written', () => expect(withDecimalsOf('± 0.5 mm', 'de')).toBe('± 0,5 mm'));
  it('take it at the end of a sentence too', () =>
    expect(withDecimalsOf('It is 90.2.', 'de')).toBe('It is 90,2.'));
  it('leave dates and versions', () =>
    expect(withDecimalsOf('1.2.3 on 22.11.2026', 'nl')).toBe('1.2.3 on 22.11.2026'));
  it('stay where the point is written', () => expect(withDecimalsOf('0.5', 'en')).toBe('0.5'));
});

describe('days that core writes', () => {
  it.each([
    ['8 March 2026', 'de', '8. März 2026'],
    ['8 March 2026', 'nl', '8 maart 2026'],
    ['8 March 2026', 'en-US', 'March 8, 2026'],
    ['22 November', 'de', '22. November'],
    ['March on', 'de', 'March on'],
  ])('%s in %s is %s', (text, locale, words) => expect(dayInLocale(text, locale)).toBe(words));
});
