import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import { aimedShow, effectOnOtherShow } from '../../../core/season/aimed-show.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { entryChecks, type PlantSize } from '../../../core/season/entry-checks.ts';
import type { Show } from '../../../core/season/show.ts';
import { type StopPlan, stopPlan } from '../../../core/season/stop-plan.ts';

const show = (id: string, on: string): Show => ({
  id,
  name: `Show ${id}`,
  day: day(on),
  place: 'village hall',
  rules: '',
  classes: [],
});
const [JUNE, JULY, MAY] = [show('june', '2026-06-20'), show('july', '2026-07-11'), show('may', '2026-05-16')];
const entered = [JUNE, JULY].map(({ id }) => ({ plantId: 'p', showId: id, classId: null }));

describe('a plant that is entered for two shows', () => {
  const aim = (today: string, picked: string | null = null) =>
    aimedShow('p', [JULY, MAY, JUNE], entered, { today: day(today), picked });

  it('aims at the first that is not over, whatever the order', () => {
    expect(aim('2026-01-01')).toEqual({ aim: JUNE, others: [JULY] });
    expect(aim('2026-06-20')?.aim).toBe(JUNE);
    expect(aim('2026-06-21')).toEqual({ aim: JULY, others: [] });
    expect(aim('2026-07-12')).toBeNull();
  });

  it('aims at the one the grower picked, while it is to come and entered for', () => {
    expect(aim('2026-01-01', 'july')).toEqual({ aim: JULY, others: [JUNE] });
    expect(aim('2026-01-01', 'may')?.aim).toBe(JUNE);
  });

  it('is told what the plan for the one does to the other', () => {
    const plan = stopPlan(
      {
        plantId: 'p',
        kind: 'regal',
        variety: '',
        showDay: JUNE.day,
        today: day('2026-01-01'),
        stops: [],
      },
      { defaults: DEFAULT_STOPS, records: [] },
    ) as StopPlan;
    const later = effectOnOtherShow(plan, JULY);
    expect(later?.words).toMatch(
      /^Show july, 11 July 2026, 21 days later: the chance that the plant is in full bloom is \d+ %; that it is over by then, if no bloom is taken off, is \d+ %\. The stops are planned for 20 June 2026\.$/,
    );
    const earlier = effectOnOtherShow(plan, MAY);
    expect(earlier?.words).toContain('35 days earlier');
    expect(earlier?.words).toContain('that it is not yet in full bloom is 98 %');
    expect(earlier?.chanceInBloom).toBeLessThan(0.1);
  });
});

describe('the limits of a class', () => {
  const SIZE: PlantSize = {
    rimMm: 130,
    widthMm: 310,
    heightMm: 260,
    plusMinusMm: 6,
    measuredOn: day('2026-05-30'),
  };
  const CLASS = { id: 'c', name: 'Regal', potMm: 152, widestMm: null, tallestMm: null, rules: '' };
  const words = (changes: Partial<typeof CLASS>, size: Partial<PlantSize> = {}) =>
    entryChecks({ ...SIZE, ...size }, { ...CLASS, ...changes }).map((check) => check.words);
  const limited = (
    potMm: number | null,
    widestMm: number | null = null,
    tallestMm: number | null = null,
  ) => ({
    ...CLASS,
    potMm,
    widestMm,
    tallestMm,
  });

  it('that a plant keeps to are said to fit', () => {
    expect(entryChecks(SIZE, CLASS)).toEqual([
      {
        limit: 'pot',
        verdict: 'fits',
        words: 'The pot’s rim measures 130 mm; the class allows 152 mm.',
      },
    ]);
  });

  // Salford & Bolton Fuchsia Society classes: pots of 9, 11, 13 and 15 cm.
  it('that are passed are told plainly, with how much', () => {
    expect(words({ potMm: 110 })).toEqual([
      'The pot’s rim measures 130 mm; the class allows 110 mm: 20 mm too much.',
    ]);
    expect(entryChecks(SIZE, limited(null, 290))).toEqual([
      {
        limit: 'width',
        verdict: 'too large',
        words: 'On 30 May 2026 the plant was 310 ± 6 mm wide; the class allows 290 mm: 20 mm too much.',
      },
    ]);
  });

  it('within the plus-minus are too near to tell', () => {
    expect(entryChecks(SIZE, limited(null, 305, 262)).map(({ verdict }) => verdict)).toEqual([
      'too near to tell',
      'too near to tell',
    ]);
    // A rim is what the grower measured: its limit is exact.
    expect(entryChecks(SIZE, limited(130))[0]?.verdict).toBe('fits');
    expect(entryChecks(SIZE, limited(129))[0]?.verdict).toBe('too large');
  });

  it('are not guessed at where the size is not known', () => {
    expect(words({}, { rimMm: null })).toEqual([
      'Not known; the class allows 152 mm. Give the pot’s rim diameter.',
    ]);
  });

  it('that a class does not have are not checked', () => {
    expect(entryChecks(SIZE, limited(null))).toEqual([]);
  });
});
