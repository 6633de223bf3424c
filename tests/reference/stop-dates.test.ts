import { describe, expect, it } from 'vitest';
import { addDays, day, daysBetween } from '../../core/day/day.ts';
import type { PlantKind } from '../../core/plant.ts';
import { DEFAULT_STOPS } from '../../core/season/default-stops.ts';
import { usualWindows } from '../../core/season/stop-defaults.ts';

describe('stop dates counted back from a show', () => {
  // Source: Salford & Bolton Fuchsia Society, "tip c": dates printed for a show on 13 August. The year is ours; all
  // dates lie after February, so leap years do not enter.
  it.each([
    [60, '2026-06-14'],
    [70, '2026-06-04'],
    [80, '2026-05-25'],
    [90, '2026-05-15'],
    [95, '2026-05-10'],
  ])('lie where the fuchsia society prints them: %d days', (daysBefore, printed) => {
    expect(addDays(day('2026-08-13'), -daysBefore)).toBe(printed);
  });

  // Source: Scottish Begonia Society: all plants stopped on 17 June, 7 weeks before the show (date implied).
  it('agree with the begonia growers: 17 June is 7 weeks before 5 August', () => {
    expect(addDays(day('2026-08-05'), -7 * 7)).toBe('2026-06-17');
  });

  // Source: Colorado State Flower Growers Association, Bulletin 67: 81 bench days, both ends counted.
  it('agree with the chrysanthemum growers: 4 October to 23 December is 81 days with both ends', () => {
    expect(daysBetween(day('2025-10-04'), day('2025-12-23')) + 1).toBe(81);
  });

  // Source: intervals of Garden News (UK), 2 March 2021; the dates are calendar arithmetic checked by hand.
  it.each([
    ['2021-06-19', ['2021-01-30', '2021-02-13', '2021-02-27', '2021-03-13', '2021-03-27']],
    ['2024-06-15', ['2024-01-27', '2024-02-10', '2024-02-24', '2024-03-09', '2024-03-23']],
    ['2026-06-20', ['2026-01-31', '2026-02-14', '2026-02-28', '2026-03-14', '2026-03-28']],
    ['2024-03-01', ['2023-10-13', '2023-10-27', '2023-11-10', '2023-11-24', '2023-12-08']],
  ])('of 20, 18, 16, 14 and 12 weeks before %s', (show, dates) => {
    expect([20, 18, 16, 14, 12].map((weeks) => addDays(day(show), -7 * weeks))).toEqual(dates);
  });

  it.each([
    ['2024-07-18', '2024-02-29'],
    ['2023-07-18', '2023-02-28'],
    ['2025-05-17', '2024-12-28'],
  ])('of 20 weeks before %s fall on %s, leap year or not', (show, stop) => {
    expect(addDays(day(show), -140)).toBe(stop);
  });

  // A source that does not add up: Ropley Horticultural Society says 24 weeks from the end of March to 21 August 2021.
  it('do not repeat a printed slip', () => {
    expect(daysBetween(day('2021-03-31'), day('2021-08-21'))).toBe(143);
  });
});

describe('the windows of the table', () => {
  const usual = (kind: PlantKind) => usualWindows(kind, DEFAULT_STOPS);
  const windows = (kind: PlantKind) =>
    usual(kind).map(({ depth, fromDaysBefore, toDaysBefore }) => [depth, fromDaysBefore, toDaysBefore]);

  it('have the regals’ deep and tip stop of common practice (no source)', () => {
    expect(windows('regal')).toEqual([
      ['deep', 26 * 7, 24 * 7],
      ['tip', 19 * 7, 18 * 7],
    ]);
  });

  // Source: Garden News (UK), 2 March 2021: angel 18, zonal and ivy-leaved 16, dwarf 12–14 weeks.
  it.each([
    ['angel', 18 * 7],
    ['zonal', 16 * 7],
    ['ivy-leaved', 16 * 7],
    ['dwarf', 13 * 7],
  ] as const)('centre on what Garden News prints for %s', (kind, daysBefore) => {
    const [rule] = usual(kind);
    expect(((rule?.fromDaysBefore ?? 0) + (rule?.toDaysBefore ?? 0)) / 2).toBe(daysBefore);
  });

  // Source: "Stopping and timing", fuchsiaclark.com: 60, 70 and 80 days.
  it.each([
    ['fuchsia-single', 60],
    ['fuchsia-semi-double', 70],
    ['fuchsia-double', 80],
  ] as const)('centre on the speakers’ figure for %s', (kind, daysBefore) => {
    const [rule] = usual(kind);
    expect(((rule?.fromDaysBefore ?? 0) + (rule?.toDaysBefore ?? 0)) / 2).toBe(daysBefore);
  });

  it('know nothing of other kinds and do not pretend to', () => {
    expect(usual('other')).toEqual([]);
  });
});
