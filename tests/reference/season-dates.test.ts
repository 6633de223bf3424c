import { afterEach, describe, expect, it } from 'vitest';
import { addDays, day, daysBetween } from '../../core/day/day.ts';
import type { PlantKind } from '../../core/plant.ts';
import { allDayEvents } from '../../core/season/all-day-events.ts';
import { calendarWeek, calendarWeeks } from '../../core/season/calendar-week.ts';
import { DEFAULT_STOPS } from '../../core/season/default-stops.ts';
import { withOwnFigures } from '../../core/season/own-defaults.ts';
import { stopPlan } from '../../core/season/stop-plan.ts';

/** The planner with a figure taken for the truth: as likely early as late, so that it counts back that figure and nothing else. */
function lastDay(kind: PlantKind, showDay: string, daysToBloom: number): string {
  const defaults = withOwnFigures(DEFAULT_STOPS, {
    acceptedLate: 0.5,
    [`${kind}.tip.meanDays`]: daysToBloom + 0.5,
  });
  const show = day(showDay);
  const plan = stopPlan(
    { plantId: 'p', kind, variety: '', showDay: show, today: addDays(show, -300), stops: [] },
    { defaults, records: [] },
  );
  if (!plan.ok) throw new Error(plan.hint);
  return plan.last.lastDay;
}

describe('the planner, given a printed figure as certain', () => {
  // Salford & Bolton Fuchsia Society, “tip c”: for a show on 13 August. The year is ours; no leap day enters.
  it.each([
    [60, '2026-06-14'],
    [70, '2026-06-04'],
    [80, '2026-05-25'],
    [90, '2026-05-15'],
    [95, '2026-05-10'],
  ])('comes to the society’s dates: %d days', (days, printed) => {
    expect(lastDay('fuchsia-single', '2026-08-13', days)).toBe(printed);
  });

  // Weeks: Garden News (UK), 2 March 2021; dates by hand. 2024 is a leap year, the last show crosses the year's end.
  it.each([
    ['2021-06-19', ['2021-01-30', '2021-02-13', '2021-02-27', '2021-03-13', '2021-03-27']],
    ['2024-06-15', ['2024-01-27', '2024-02-10', '2024-02-24', '2024-03-09', '2024-03-23']],
    ['2026-06-20', ['2026-01-31', '2026-02-14', '2026-02-28', '2026-03-14', '2026-03-28']],
    ['2024-03-01', ['2023-10-13', '2023-10-27', '2023-11-10', '2023-11-24', '2023-12-08']],
  ])('comes to 20, 18, 16, 14 and 12 weeks before %s', (show, dates) => {
    const kinds = ['regal', 'angel', 'zonal', 'dwarf', 'dwarf'] as const;
    expect([20, 18, 16, 14, 12].map((weeks, k) => lastDay(kinds[k] as PlantKind, show, 7 * weeks))).toEqual(
      dates,
    );
  });

  it.each([
    ['2024-07-18', '2024-02-29'],
    ['2023-07-18', '2023-02-28'],
    ['2025-05-17', '2024-12-28'],
  ])('comes 20 weeks before %s to %s, leap year or not', (show, stop) => {
    expect(lastDay('regal', show, 140)).toBe(stop);
  });

  // Society and exhibitor pages of the northern half print no such dates; arithmetic by hand. A show in November stops in winter and spring.
  it('plans a season of the southern half as well: a show on 14 November', () => {
    expect(lastDay('regal', '2026-11-14', 140)).toBe('2026-06-27');
    expect(lastDay('fuchsia-double', '2026-11-14', 80)).toBe('2026-08-26');
  });
});

describe('the planner by its own table', () => {
  // The spans of all figures printed for each: pelargoniums in weeks (Garden News, 2 March 2021; prize-pelargoniums.com, 24 February 2015;
  // Penney, congresburygardening.org.uk), fuchsias in days (fuchsiaclark.com; Salford & Bolton; B.C. Fuchsia Society; society newsletter,
  // April 2001; smithyveg.blogspot.com, 2007). Where the highest is a single figure it has a week of leeway. The day on which one plant of ten would be late lies at the early end of them.
  it.each([
    ['regal', 14 * 7, 20 * 7],
    ['angel', 12 * 7, 18 * 7 + 7],
    ['zonal', 13 * 7, 16 * 7 + 7],
    ['dwarf', 12 * 7, 14 * 7],
    ['fuchsia-single', 6 * 7, 70],
    ['fuchsia-semi-double', 8 * 7, 90],
    ['fuchsia-double', 8 * 7, 95],
  ] as const)('stops a %s within what is printed, %i to %i days before the show', (kind, least, most) => {
    const show = day('2026-06-20');
    const plan = stopPlan(
      { plantId: 'p', kind, variety: '', showDay: show, today: addDays(show, -300), stops: [] },
      { defaults: DEFAULT_STOPS, records: [] },
    );
    const days = plan.ok ? plan.last.daysBeforeShow : 0;
    expect(days).toBeGreaterThanOrEqual((least + most) / 2);
    expect(days).toBeLessThanOrEqual(most);
  });
});

describe('the sources’ own slips', () => {
  // Woolmans: stopped in the first week of May, about 16 weeks, for the first week of September.
  it('16 weeks from the first week of May end in August, not in the first week of September', () => {
    expect([addDays(day('2026-05-01'), 112), addDays(day('2026-05-07'), 112)]).toEqual([
      '2026-08-21',
      '2026-08-27',
    ]);
  });

  // Ropley Horticultural Society: 24 weeks from the end of March to 21 August 2021.
  it('from 31 March to 21 August it is 20 weeks and 3 days, not 24 weeks', () => {
    expect(daysBetween(day('2021-03-31'), day('2021-08-21'))).toBe(20 * 7 + 3);
  });

  // Colorado State Flower Growers Association, Bulletin 67: 81 bench days.
  it('81 days from 4 October to 23 December count both ends', () => {
    expect(daysBetween(day('2025-10-04'), day('2025-12-23'))).toBe(80);
  });

  // “Final Stops”, prize-pelargoniums.com, 24 February 2015: for June shows. 13.9 to 18.0 weeks, by hand.
  it('from 24 February to June it is 14 to 18 weeks, not the 18–19 of common practice', () => {
    expect(daysBetween(day('2015-02-24'), day('2015-06-01'))).toBe(97);
    expect(daysBetween(day('2015-02-24'), day('2015-06-30'))).toBe(126);
  });
});

describe('calendar weeks', () => {
  // ISO 8601-1:2019; the pairs are those commonly printed to explain it (from memory).
  it.each([
    ['2005-01-01', 2004, 53],
    ['2005-01-02', 2004, 53],
    ['2005-12-31', 2005, 52],
    ['2007-01-01', 2007, 1],
    ['2008-12-28', 2008, 52],
    ['2008-12-29', 2009, 1],
    ['2009-12-31', 2009, 53],
    ['2010-01-03', 2009, 53],
    ['2020-12-31', 2020, 53],
    ['2021-01-03', 2020, 53],
    ['2021-01-04', 2021, 1],
    ['2026-12-31', 2026, 53],
    ['1999-12-31', 1999, 52],
  ])('%s lies in %i, week %i', (of, year, week) => {
    expect(calendarWeek(day(of))).toMatchObject({ year, week });
  });

  it('run on without a gap over week 53', () => {
    const weeks = calendarWeeks(day('2020-12-20'), day('2021-01-12'));
    expect(weeks.map(({ year, week, monday }) => `${year}-${week} ${monday}`)).toEqual([
      '2020-51 2020-12-14',
      '2020-52 2020-12-21',
      '2020-53 2020-12-28',
      '2021-1 2021-01-04',
      '2021-2 2021-01-11',
    ]);
  });
});

describe('in any time zone', () => {
  const home = process.env.TZ;
  afterEach(() => {
    if (home === undefined) delete process.env.TZ;
    else process.env.TZ = home;
  });

  // Clocks change: New York 8 March, London 29 March, Auckland 5 April 2026 (from memory).
  it.each(['America/New_York', 'Europe/London', 'Pacific/Auckland', 'Pacific/Kiritimati'])(
    'a plan’s days are the same: %s',
    (zone) => {
      process.env.TZ = zone;
      expect(lastDay('regal', '2026-07-18', 140)).toBe('2026-02-28');
      expect(lastDay('zonal', '2026-06-28', 91)).toBe('2026-03-29');
      expect(lastDay('zonal', '2026-06-28', 92)).toBe('2026-03-28');
      expect(lastDay('dwarf', '2026-06-07', 91)).toBe('2026-03-08');
      expect(lastDay('dwarf', '2026-07-05', 91)).toBe('2026-04-05');
      const [event] = allDayEvents({
        shows: [{ id: 's', name: 'Spring show', day: day('2026-03-29'), place: '', rules: '', classes: [] }],
        entries: [],
        work: [],
        plantNames: new Map(),
        withWeekly: false,
      });
      expect([event?.day, event?.endExclusive]).toEqual(['2026-03-29', '2026-03-30']);
    },
  );
});
