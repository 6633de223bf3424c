import { describe, expect, it } from 'vitest';
import { dateEffectWords } from '../../../core/cut/date-effect.ts';
import { day } from '../../../core/day/day.ts';

const SHOW = day('2026-08-13');

describe('what a stop does to the date', () => {
  // Salford and Bolton Fuchsia Society, tip sheet, dates for a show on 13 August: 60 days before is 14 June, 70 is 4 June, 80 is 25 May.
  it.each([
    ['fuchsia-single', '2026-06-14'],
    ['fuchsia-semi-double', '2026-06-04'],
    ['fuchsia-double', '2026-05-25'],
  ] as const)('a %s stopped on the society’s day blooms in time', (kind, stop) => {
    expect(dateEffectWords('tip', { kind, today: day(stop), showDay: SHOW })).toContain(
      'in time for the show',
    );
  });

  it('comes late or early by the days in between', () => {
    const words = (today: string) =>
      dateEffectWords('tip', { kind: 'fuchsia-single', today: day(today), showDay: SHOW });
    // 60 days, three either side.
    expect(words('2026-06-18')).toContain(
      'about 14 August 2026 to 20 August 2026, 1 day or more after the show',
    );
    expect(words('2026-06-01')).toContain('10 days or more before the show');
  });

  it('says that no figure is known for a deep stop of most kinds', () => {
    const words = dateEffectWords('deep', { kind: 'zonal', today: day('2026-03-01'), showDay: null });
    expect(words).toMatch(
      /^No figure is known for a deep stop of this kind\. It takes longer than a tip stop\. A tip stop today brings bloom about/,
    );
    expect(words).not.toContain('the show');
  });

  it('knows nothing of other kinds, and says so', () => {
    expect(dateEffectWords('tip', { kind: 'other', today: day('2026-03-01'), showDay: SHOW })).toBe(
      'How long this kind takes from a tip stop to bloom is not known: go by your own records.',
    );
  });
});
