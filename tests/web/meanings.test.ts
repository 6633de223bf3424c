import { describe, expect, it } from 'vitest';
import type { PhotoReport } from '../../core/report.ts';
import { EXTRA_MEANINGS, EXTRA_MEASURES, readExtra } from '../../web/src/measures/extra-readings.ts';
import { MEANINGS } from '../../web/src/measures/meanings.ts';
import { PLANT_MEANINGS } from '../../web/src/measures/plant-meanings.ts';
import { PLANT_GROUPS, readPlant } from '../../web/src/measures/plant-readings.ts';
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
    ...PLANT_GROUPS.flatMap(({ measures }) => measures.map((name) => [name, PLANT_MEANINGS[name]] as const)),
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
    expect(readExtra(EXTRAS, 'inscribed', 0.4)).toEqual({
      value: '128',
      plusMinus: null,
      unit: 'mm',
      aside: null,
    });
    expect(readExtra(EXTRAS, 'circumscribed', null)).toEqual({
      value: '400',
      plusMinus: null,
      unit: 'px',
      aside: null,
    });
    expect(readExtra(EXTRAS, 'deviations', 0.4)).toMatchObject({ value: '20.0', unit: 'mm' });
    expect(readExtra(EXTRAS, 'deviations', null)).toMatchObject({ value: '50.0', unit: 'px' });
  });

  it('leans to a side, or is not known without a pot', () => {
    expect(readExtra(EXTRAS, 'bestAxis', null)).toEqual({
      value: '3.2',
      plusMinus: null,
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

describe('a number on leaf, flower, gaps or size', () => {
  const leaf = (yellow: number, notCompared: string | null = null, against = 'own') => ({
    green: { share: 1 - yellow, plusMinus: 0.03, offBy: 0.03 },
    yellow: { share: yellow, plusMinus: 0.03, offBy: 0.03 },
    brown: { share: 0, plusMinus: 0.01, offBy: 0.01 },
    notCompared,
    against,
    where: [{ place: 'low on the left' }, { place: 'low on the left' }],
  });
  const report = (more: object) =>
    ({
      notCompared: null,
      foliage: leaf(0.12),
      flower: null,
      gaps: null,
      canopy: null,
      scale: null,
      ...more,
    }) as unknown as PhotoReport;
  const read = (now: PhotoReport, before: PhotoReport | null, measure: Parameters<typeof readPlant>[3]) =>
    readPlant(now, before, 'regal', measure);

  it('says its plus-minus, where it stands and what became of it', () => {
    expect(read(report({}), report({ foliage: leaf(0.03) }), 'yellowLeaf')).toEqual({
      value: '12',
      plusMinus: '±3',
      unit: '%',
      aside: 'low on the left. +9 %',
    });
    expect(read(report({}), report({ foliage: leaf(0.09) }), 'yellowLeaf').aside).toContain('no change');
  });

  it('says why it is not compared: no white, another normal leaf, another place', () => {
    const noWhite = report({ foliage: leaf(0.12, 'White is not known.') });
    expect(read(noWhite, report({}), 'yellowLeaf').aside).toContain('Not compared: White is not known.');
    const usual = report({ foliage: leaf(0.03, null, 'usual') });
    expect(read(report({}), usual, 'greenLeaf').aside).toContain('learned in between');
    const far = report({ notCompared: 'The camera stood elsewhere.' });
    expect(read(far, report({}), 'brownLeaf').aside).toContain('The camera stood elsewhere.');
  });

  it('says what is missing where it is not known', () => {
    expect(read(report({}), null, 'canopyArea')).toMatchObject({
      value: null,
      aside: expect.stringContaining('scale'),
    });
    expect(read(report({}), null, 'flowerHeads')).toMatchObject({ value: null });
    const noScale = report({ flower: { share: 0.1, plusMinus: 0.02, patchesMm2: null } });
    expect(read(noScale, null, 'flowerHeads').aside).toContain('scale');
  });

  it('counts flower heads as a range', () => {
    const flower = { share: 0.1, plusMinus: 0.02, patchesMm2: [2827, 2827] };
    expect(read(report({ flower }), null, 'flowerHeads').value).toMatch(/^\d+–\d+$/);
  });

  it('doubles the share of the plus-minus in an area', () => {
    const sized = report({
      canopy: { widthMm: 300, heightMm: 200, areaPx: 10_000 },
      scale: { mmPerPx: 2, from: 'rim' },
      ball: { radiusMm: 150, radiusPlusMinusMm: 3 },
    });
    expect(read(sized, null, 'canopyWidth')).toMatchObject({ value: '300', plusMinus: '±6' });
    expect(read(sized, null, 'canopyArea')).toMatchObject({ value: '400', plusMinus: '±16', unit: 'cm²' });
  });
});
