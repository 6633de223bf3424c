import { describe, expect, it } from 'vitest';
import { day } from '../../core/day/day.ts';
import { EMPTY_DRAFT, readDraft } from '../../web/src/plant/plant-draft.ts';
import { weekTicks } from '../../web/src/trend/week-axis.ts';

describe('a plant as typed', () => {
  it('may carry its unit and a decimal comma', () => {
    const read = readDraft({ ...EMPTY_DRAFT, name: 'Attic', rim: '127,5 mm' });
    expect(read).toMatchObject({ ok: true, form: { rimMm: 127.5, showDay: null } });
  });

  it('is sent back with a sentence beside the entry that cannot be read', () => {
    expect(readDraft({ ...EMPTY_DRAFT, rim: 'five inches' })).toEqual({
      ok: false,
      fields: { rimMm: 'Give the pot rim in millimetres, for example 130.' },
    });
    expect(readDraft({ ...EMPTY_DRAFT, showDay: '2026-02-30' })).toMatchObject({ ok: false });
  });
});

describe('the weeks of a trend', () => {
  it('are counted back from the show', () => {
    const ticks = weekTicks(day('2026-08-23'), day('2026-11-22'), day('2026-11-28'), 4);
    expect(ticks.map(({ week }) => week)).toEqual([12, 8, 4]);
    expect(ticks[0]?.day).toBe('2026-09-05');
  });

  it('are counted from the first sitting without a show', () => {
    expect(weekTicks(day('2026-08-23'), day('2026-09-13'), null, 6)).toEqual([
      { day: '2026-08-23', week: 0 },
      { day: '2026-08-30', week: 1 },
      { day: '2026-09-06', week: 2 },
      { day: '2026-09-13', week: 3 },
    ]);
  });
});
