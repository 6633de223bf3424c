import { describe, expect, it } from 'vitest';
import { day } from '../../core/day/day.ts';
import { monthWords, weeksInWords } from '../../web/src/calendar/calendar-words.ts';
import { type DrawnSeason, seasonMarks } from '../../web/src/calendar/season-marks.ts';
import { laneOf, monthsOf, stretchOf, weekScale } from '../../web/src/calendar/week-scale.ts';

describe('weeks across a page', () => {
  it('begin on a Monday and end on a Sunday, with week 53 where the year has one', () => {
    // ISO 8601: 2026 has 53 weeks, and its last one ends on 3 January 2027.
    const scale = weekScale(day('2026-12-30'), day('2027-01-05'));
    expect([scale.firstDay, scale.lastDay]).toEqual(['2026-12-28', '2027-01-10']);
    expect(scale.weeks.map(({ week }) => week)).toEqual([53, 1]);
    expect(weeksInWords(scale)).toBe('Weeks 53 of 2026 to 1 of 2027');
  });

  it('put a day where it belongs, and leave out what lies outside', () => {
    const scale = weekScale(day('2026-06-01'), day('2026-06-14'));
    expect(stretchOf(scale, day('2026-06-01'), day('2026-06-07'))).toEqual({
      leftPercent: 0,
      widthPercent: 50,
    });
    expect(stretchOf(scale, day('2026-06-08'), day('2026-09-01'))).toEqual({
      leftPercent: 50,
      widthPercent: 50,
    });
    expect(stretchOf(scale, day('2026-05-01'), day('2026-05-31'))).toBeNull();
  });

  it('are parted into months without a gap, through a leap February', () => {
    const scale = weekScale(day('2028-01-03'), day('2028-04-30'));
    const months = monthsOf(scale);
    expect(months.map(({ firstDay }) => monthWords(firstDay, false, 'en-GB'))).toEqual([
      'Jan',
      'Feb',
      'Mar',
      'Apr',
    ]);
    expect(months.reduce((sum, { widthPercent }) => sum + widthPercent, 0)).toBeCloseTo(100, 10);
    expect(monthWords(day('2027-01-01'), true, 'en-GB')).toBe('Jan 2027');
  });

  it('hold labels that do not cover one another', () => {
    expect(laneOf([0, 5, 20, 21], 15)).toEqual([0, 1, 0, 1]);
  });
});

describe('the marks of a season', () => {
  const season: DrawnSeason = {
    steps: [
      {
        role: 'last',
        depth: 'tip',
        window: { from: day('2026-06-02'), to: day('2026-06-08') },
        usual: { from: day('2026-06-04'), to: day('2026-06-11') },
        latest: day('2026-06-20'),
        state: 'to-come',
        doneOn: null,
        offDays: null,
        words: 'The last stop (tip) is planned.',
      },
    ],
    bloom90: [day('2026-08-01'), day('2026-08-10')],
    bloomLastsDays: 14,
    stops: [{ id: 's', plantId: 'p', day: day('2026-04-01'), depth: 'deep', note: 'Hard.' }],
    notes: [{ id: 'n', plantId: 'p', day: day('2026-04-09'), kind: 'seen-whitefly', text: '' }],
    work: [],
    shows: [{ id: 'w', name: 'Alder Vale', day: day('2026-08-13'), place: '', rules: '', classes: [] }],
    aimShowId: 'w',
  };
  const marks = seasonMarks(season, day('2026-05-01'));
  const mark = (shape: string) => marks.find((one) => one.shape === shape);

  it('say each in words what they draw', () => {
    expect(mark('window-tip')?.words).toMatch(/^The last stop \(tip\) is planned\. Usually: /);
    expect(mark('stop-deep')?.words).toContain('Hard.');
    expect(mark('trouble')?.words).toContain('Whitefly seen');
    expect(mark('show')?.words).toContain('The stops are planned for it.');
    expect(mark('bloom')?.words).toContain('nine times in ten');
  });

  it('draw likely bloom from its first beginning to the end of its last', () => {
    expect([mark('bloom')?.from, mark('bloom')?.to]).toEqual(['2026-08-01', '2026-08-23']);
  });

  it('leave out work that has lapsed, and stops that the windows tell', () => {
    const work = (kind: string, state: string) => ({
      kind,
      state,
      key: `${kind}${state}`,
      day: '2026-05-02',
      dueBy: '2026-05-02',
    });
    const drawn = seasonMarks(
      {
        ...season,
        work: [
          work('stop', 'due'),
          work('feed', 'lapsed'),
          work('feed', 'due'),
        ] as unknown as DrawnSeason['work'],
      },
      day('2026-05-01'),
    );
    expect(drawn.filter(({ shape }) => shape === 'work').map(({ key }) => key)).toEqual(['feeddue']);
  });
});
