import { describe, expect, it } from 'vitest';
import { day } from '../../core/day/day.ts';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { PlantSeasonAnswer, PlantYear } from '../../server/schemas/season.ts';
import { yearChoices } from '../../web/src/year/year-choices.ts';
import { scoreWords, yearFacts } from '../../web/src/year/year-words.ts';

const sitting = {
  sittingId: 's',
  day: day('2026-08-10'),
  roundness: { value: 91.52, plusMinus: 1.44 },
  symmetry: null,
  lopsidedness: { value: -6.4, plusMinus: 1.1 },
  setAside: null,
  pictureUrl: null,
};
const YEAR = {
  show: null,
  result: null,
  bloom: { firstFlowerDay: null, fullBloomDay: null, daysFromLastStop: null, daysAfterShow: null },
  atShow: null,
} as unknown as PlantYear;
const SHOW = { id: 'w', name: 'Alder Vale', day: day('2026-08-13'), place: 'Hall', rules: '', classes: [] };

describe('a plant’s year', () => {
  it('says each score with its plus-minus and the side it leans to', () => {
    expect(scoreWords(sitting, 'roundness')).toBe('92 ±1.4');
    expect(scoreWords(sitting, 'symmetry')).toBe('not known');
    expect(scoreWords(sitting, 'lopsidedness')).toBe('6.4 % ±1.1, to the left');
    expect(scoreWords({ ...sitting, lopsidedness: { value: 0.9, plusMinus: 1.1 } }, 'lopsidedness')).toBe(
      '0.9 % ±1.1, even',
    );
  });

  it('says what was not noted instead of leaving it out', () => {
    const facts = Object.fromEntries(yearFacts({ ...YEAR, show: SHOW }, day('2026-09-01')));
    expect(facts['At the show']).toBe('Not written down.');
    expect(facts['Full bloom']).toBe('Not noted.');
    expect(facts['Shape near the show']).toBe('No measured photo in the fortnight before it.');
  });

  it('says how far from the show full bloom came', () => {
    const bloom = {
      ...YEAR.bloom,
      fullBloomDay: day('2026-08-18'),
      daysFromLastStop: 69,
      daysAfterShow: 5,
    };
    const facts = Object.fromEntries(yearFacts({ ...YEAR, show: SHOW, bloom }, day('2026-09-01')));
    expect(facts['Full bloom']).toMatch(/69 days from the last stop, 5 days after the show\.$/);
  });

  it('can be chosen by show and by calendar year, the latest first', () => {
    const entries = [
      { show: { ...SHOW, id: 'old', name: 'Old Show 2025', day: day('2025-08-10') }, isAim: false },
      { show: SHOW, isAim: true },
    ] as unknown as PlantSeasonAnswer['entries'];
    const page = {
      earlier: [],
      sittings: [{ day: '2026-05-01' }],
      stops: [{ day: '2025-06-01' }],
      notes: [],
    } as unknown as PlantPage;
    const choices = yearChoices(page, entries);
    expect(choices.map(({ days }) => days)).toEqual([
      '',
      '?from=2024-08-25&to=2025-08-24',
      '?from=2026-01-01&to=2026-12-31',
      '?from=2025-01-01&to=2025-12-31',
    ]);
    expect(choices[0]?.words).toContain('Season to Alder Vale');
    expect(choices[1]?.words).toBe('Season to Old Show 2025');
  });
});
