import { describe, expect, it } from 'vitest';
import type { PhotoReport } from '../../core/report.ts';
import { EXTRA_MEANINGS, EXTRA_MEASURES, readExtra } from '../../web/src/measures/extra-readings.ts';
import { MEANINGS } from '../../web/src/measures/meanings.ts';
import { MEASURES, readMeasure } from '../../web/src/measures/reading.ts';

const EXTRAS = {
  circularityCrofton: 0.4512,
  areaRoundness: 0.781,
  circumscribedRadiusPx: 400,
  circumscribedRadiusMm: null,
  inscribedRadiusPx: 320,
  inscribedRadiusMm: 128.4,
  bestAxisTiltDeg: -3.21,
  bestAxisSymmetry: 91.4,
  deviations: { peakToValleyPx: 50, peakPx: 30, valleyPx: 20, rootMeanSquarePx: 12.5 },
} satisfies NonNullable<PhotoReport['extras']>;

describe('every number', () => {
  const all = [
    ...MEASURES.map((name) => [name, MEANINGS[name]] as const),
    ...EXTRA_MEASURES.map((name) => [name, EXTRA_MEANINGS[name]] as const),
  ];

  it.each(all)(
    '%s says what it means, unit and range, where it leans, how far to trust it and its source',
    (_, meaning) => {
      for (const words of Object.values(meaning)) expect(words).toMatch(/^\S.{7,}[.…]$/s);
      expect(meaning.range).toMatch(/unit|%|mm|Degrees/);
      expect(meaning.source).toMatch(/\d{4}|own/);
    },
  );
});

describe('an extra', () => {
  it('is in mm where the scale is known, else in px', () => {
    expect(readExtra(EXTRAS, 'inscribed', 0.4)).toEqual({ value: '128', unit: 'mm', aside: null });
    expect(readExtra(EXTRAS, 'circumscribed', null)).toEqual({ value: '400', unit: 'px', aside: null });
    expect(readExtra(EXTRAS, 'deviations', 0.4)).toMatchObject({ value: '20.0', unit: 'mm' });
    expect(readExtra(EXTRAS, 'deviations', null)).toMatchObject({ value: '50.0', unit: 'px' });
  });

  it('leans to a side, or is not known without a pot', () => {
    expect(readExtra(EXTRAS, 'bestAxis', null)).toEqual({
      value: '3.2',
      unit: '°',
      aside: 'to the left, symmetry about that line 91',
    });
    expect(readExtra({ ...EXTRAS, bestAxisTiltDeg: null }, 'bestAxis', null).value).toBeNull();
  });
});

describe('the size', () => {
  it('carries the plus-minus of the diameter', () => {
    const report = { ball: { radiusMm: 150, radiusPlusMinusMm: 2.5 } } as PhotoReport;
    expect(readMeasure(report, 'size')).toMatchObject({ value: 300, plusMinus: 5 });
  });
});
