import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import { allDayEvents, type CalendarQuestion } from '../../../core/season/all-day-events.ts';
import type { WorkKind } from '../../../core/season/work.ts';
import type { WorkNow, WorkState } from '../../../core/season/work-now.ts';

const SHOW = {
  id: 's',
  name: 'Summer show',
  day: day('2026-06-20'),
  place: 'Village hall',
  rules: 'Staging until ten.',
  classes: [],
};

function work(kind: WorkKind, from: string, to: string, state: WorkState = 'to-come'): WorkNow {
  return {
    key: `p:${kind}:${from}`,
    plantId: 'p',
    kind,
    day: day(from),
    dueBy: day(to),
    until: day(to),
    what: 'Do it.',
    why: 'Because.',
    standing: 'Common practice, no source.',
    caution: kind === 'stop' ? 'Cut away from your hand.' : null,
    doneOn: null,
    state,
    movedFrom: null,
    stateInWords: null,
  };
}

const events = (changes: Partial<CalendarQuestion>) =>
  allDayEvents({
    shows: [],
    entries: [],
    work: [],
    plantNames: new Map([
      ['p', 'Violet One'],
      ['q', 'Amber Two'],
    ]),
    withWeekly: false,
    ...changes,
  });

describe('events of the season', () => {
  it('of a show name the plants entered and remind a week before', () => {
    const entries = ['q', 'p', 'gone'].map((plantId) => ({ plantId, showId: 's', classId: null }));
    expect(events({ shows: [SHOW], entries })).toEqual([
      {
        uid: 'show:s',
        day: '2026-06-20',
        endExclusive: '2026-06-21',
        summary: 'Summer show',
        description: 'Entered: Amber Two, Violet One.\nStaging until ten.',
        place: 'Village hall',
        reminderDaysBefore: 7,
      },
    ]);
  });

  // RFC 5545, 3.6.1: an end that is a date is the day after the last.
  it('of a stop last as long as its window and carry their caution', () => {
    expect(events({ work: [work('stop', '2026-01-30', '2026-02-05')] })).toEqual([
      {
        uid: 'p:stop:2026-01-30',
        day: '2026-01-30',
        endExclusive: '2026-02-06',
        summary: 'Violet One: Do it.',
        description: 'Because.\nCommon practice, no source.\nCut away from your hand.',
        place: null,
        reminderDaysBefore: 3,
      },
    ]);
  });

  it('end after leap day, year’s end and the change of the clocks as the calendar does', () => {
    const ends = (from: string) => events({ work: [work('check-entry', from, from)] })[0]?.endExclusive;
    expect(ends('2028-02-28')).toBe('2028-02-29');
    expect(ends('2026-02-28')).toBe('2026-03-01');
    expect(ends('2026-12-31')).toBe('2027-01-01');
    expect(ends('2026-03-29')).toBe('2026-03-30');
  });

  it('leave out what is done, skipped or lapsed, and weekly work unless wanted', () => {
    const list = [
      ...(['done', 'skipped', 'lapsed', 'due'] as const).map((state, k) =>
        work('look-for-breaks', `2026-02-0${k + 1}`, '2026-02-09', state),
      ),
      work('photograph', '2026-02-05', '2026-02-05'),
    ];
    expect(events({ work: list }).map(({ uid }) => uid)).toEqual(['p:look-for-breaks:2026-02-04']);
    expect(events({ work: list, withWeekly: true })).toHaveLength(2);
  });

  it('come in order of day, each with an id of its own', () => {
    const found = events({
      shows: [SHOW],
      work: [work('stop', '2026-01-30', '2026-02-05'), work('keep-dry', '2026-01-02', '2026-01-08')],
    });
    expect(found.map(({ day: on }) => on)).toEqual(['2026-01-02', '2026-01-30', '2026-06-20']);
    expect(new Set(found.map(({ uid }) => uid)).size).toBe(3);
  });
});
