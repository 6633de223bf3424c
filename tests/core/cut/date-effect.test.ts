import { describe, expect, it } from 'vitest';
import { dateEffectWords } from '../../../core/cut/date-effect.ts';
import { day } from '../../../core/day/day.ts';
import type { BloomRecord } from '../../../core/season/bloom-record.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';

const SHOW = day('2026-08-13');

/** "14 August 2026" as a number to compare. */
const dayOf = (words: string) => Date.parse(`${words} UTC`);

describe('what a stop does to the date', () => {
  // Salford and Bolton Fuchsia Society, tip sheet, dates for a show on 13 August: 60 days before is 14 June, 70 is 4 June, 80 is 25 May.
  it.each([
    ['fuchsia-single', '2026-06-14'],
    ['fuchsia-semi-double', '2026-06-04'],
    ['fuchsia-double', '2026-05-25'],
  ] as const)('a %s stopped on the society’s day has the show among its likely days', (kind, stop) => {
    const words = dateEffectWords('tip', { kind, today: day(stop), showDay: SHOW });
    const [, from = '', to = ''] =
      /full bloom begins (.+?) to (.+?), nine times in ten; the chance of being late/.exec(words) ?? [];
    expect(dayOf(from)).toBeLessThan(dayOf('13 August 2026'));
    expect(dayOf(to)).toBeGreaterThan(dayOf('13 August 2026'));
  });

  it('is likelier late the later it is done', () => {
    const late = (today: string) =>
      Number(
        /being late for the show is (\d+) %/.exec(
          dateEffectWords('tip', { kind: 'fuchsia-single', today: day(today), showDay: SHOW }),
        )?.[1],
      );
    expect(late('2026-06-06')).toBeLessThan(10);
    expect(late('2026-06-14')).toBeGreaterThan(30);
    expect(late('2026-06-24')).toBeGreaterThan(80);
  });

  it('goes by the plant’s own records', () => {
    const record = (year: number): BloomRecord => ({
      plantId: 'lantern',
      kind: 'fuchsia-single',
      variety: 'Pale Lantern',
      depth: 'tip',
      stopDay: day(`${year}-06-01`),
      firstFlowerDay: null,
      fullBloomDay: day(`${year}-08-20`),
      seasonNotes: [],
      leftOut: null,
    });
    const knowledge = { defaults: DEFAULT_STOPS, records: [2023, 2024, 2025].map(record) };
    const plant = { kind: 'fuchsia-single', today: day('2026-06-01'), showDay: SHOW } as const;
    const words = dateEffectWords('tip', {
      ...plant,
      season: { plantId: 'lantern', variety: 'Pale Lantern', knowledge },
    });
    expect(words).toMatch(/being late for the show is [5-9]\d %/);
    expect(words).toContain('your own 3 records');
    expect(dateEffectWords('tip', plant)).not.toMatch(/being late for the show is [5-9]\d %/);
  });

  it('says that no figure is known for a deep stop of most kinds', () => {
    const words = dateEffectWords('deep', { kind: 'zonal', today: day('2026-03-01'), showDay: null });
    expect(words).toMatch(
      /^No figure is known for a deep stop of this kind\. It takes longer than a tip stop\. After a tip stop today full bloom begins/,
    );
    expect(words).not.toContain('late for the show');
  });

  it('knows nothing of other kinds, and says so', () => {
    expect(dateEffectWords('tip', { kind: 'other', today: day('2026-03-01'), showDay: SHOW })).toBe(
      'How long this kind takes from a tip stop to bloom is not known: go by your own records.',
    );
  });
});
