import { describe, expect, it } from 'vitest';
import { addDays, day, daysBetween } from '../../../core/day/day.ts';
import { PLANT_KINDS } from '../../../core/plant.ts';
import type { BloomRecord } from '../../../core/season/bloom-record.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { type PlanQuestion, type StopPlan, stopPlan } from '../../../core/season/stop-plan.ts';
import type { WrittenStop } from '../../../core/season/written-stops.ts';

const SHOW = day('2026-06-20');
const REGAL = { plantId: 'p', kind: 'regal', variety: '', showDay: SHOW } as const;

function plan(changes: Partial<PlanQuestion>): StopPlan {
  const found = stopPlan(
    { ...REGAL, today: day('2025-11-01'), stops: [], ...changes },
    { defaults: DEFAULT_STOPS, records: [] },
  );
  if (!found.ok) throw new Error(found.hint);
  return found;
}

const tip = (on: string): WrittenStop => ({ day: day(on), depth: 'tip' });
const deep = (on: string): WrittenStop => ({ day: day(on), depth: 'deep' });
const states = ({ steps }: StopPlan) => steps.map(({ role, state }) => `${role} ${state}`);

describe('the stops of a season', () => {
  it('are counted back from the last, each its weeks before the next', () => {
    const { steps, last } = plan({});
    expect(steps.map(({ role, depth, window }) => [role, depth, window.from, window.to])).toEqual([
      ['first', 'deep', '2025-12-16', '2025-12-22'],
      ['last', 'tip', '2026-01-30', '2026-02-05'],
    ]);
    expect(last).toMatchObject({ daysBeforeShow: 135, lastDay: '2026-02-05' });
    expect(steps[1]?.usual).toEqual({ from: '2026-02-07', to: '2026-02-14' });
  });

  it('of a fuchsia are three, a month apart', () => {
    const { steps } = plan({ kind: 'fuchsia-single', showDay: day('2026-08-13') });
    expect(steps.map(({ role, window }) => [role, window.to])).toEqual([
      ['first', '2026-04-09'],
      ['second', '2026-05-09'],
      ['last', '2026-06-08'],
    ]);
    // 60 days, three either side; nothing is printed for the first two.
    expect(steps.map(({ usual }) => usual)).toEqual([null, null, { from: '2026-06-11', to: '2026-06-17' }]);
  });

  it('end on a day with a chance of being late of at most one in ten, for every kind with a figure', () => {
    for (const kind of PLANT_KINDS.filter((one) => one !== 'other')) {
      const { last, effect } = plan({ kind });
      expect(last.chanceLate).toBeLessThanOrEqual(0.1);
      expect(last.chanceLate).toBeGreaterThan(0.07);
      expect(effect?.chanceLate).toBe(last.chanceLate);
    }
  });

  it('come, are due, run late and are left out as the days go by', () => {
    const on = (today: string) => states(plan({ today: day(today) }));
    expect(on('2025-12-15')).toEqual(['first to-come', 'last to-come']);
    expect(on('2025-12-16')).toEqual(['first open', 'last to-come']);
    expect(on('2025-12-23')).toEqual(['first overdue', 'last to-come']);
    // A month before the last stop is the latest that leaves time to break.
    expect(on('2026-01-08')).toEqual(['first overdue', 'last to-come']);
    expect(on('2026-01-09')).toEqual(['first left-out', 'last to-come']);
    expect(on('2026-02-05')).toEqual(['first left-out', 'last open']);
    expect(on('2026-02-18')).toEqual(['first left-out', 'last overdue']);
    expect(on('2026-02-19')).toEqual(['first left-out', 'last left-out']);
  });

  it('are none for a show that is over, or a kind of which nothing is known', () => {
    const ask = (changes: Partial<PlanQuestion>) =>
      stopPlan(
        { ...REGAL, today: day('2026-06-21'), stops: [], ...changes },
        { defaults: DEFAULT_STOPS, records: [] },
      );
    expect(ask({})).toMatchObject({ ok: false, reason: 'show-over' });
    expect(ask({ kind: 'other', showDay: day('2026-09-01') })).toMatchObject({
      ok: false,
      reason: 'no-figure',
    });
  });
});

describe('a stop that is written down', () => {
  it('late moves bloom, and the plan says to what chance', () => {
    const { words, effect, restsOn } = plan({ today: day('2026-03-01'), stops: [tip('2026-02-14')] });
    expect(restsOn).toBe('written');
    expect(words).toBe(
      'Done 9 days late. The chance of being late is 33 %; full bloom begins 31 May 2026 to 3 July 2026, nine times in ten.',
    );
    // 126 days are left: t = (126.5 − 122.5) ÷ 8.573 = 0.467 of 6 degrees of freedom, above which lie 32.9 % (SciPy: t.sf(0.4666, 6)).
    expect(effect?.chanceLate).toBeCloseTo(0.33, 1);
  });

  it('early leaves less chance of being late', () => {
    const { words, effect } = plan({ today: day('2026-03-01'), stops: [tip('2026-01-20')] });
    expect(words).toMatch(/^Done 10 days early\./);
    expect(effect?.chanceLate).toBeLessThan(0.05);
  });

  it('in its window is done as planned', () => {
    expect(plan({ today: day('2026-03-01'), stops: [tip('2026-02-01')] }).words).toMatch(
      /^Done as planned\./,
    );
  });

  it('is matched to the step it may be meant for', () => {
    const today = day('2026-03-01');
    const done = (...stops: WrittenStop[]) => states(plan({ today, stops }));
    expect(done(deep('2025-12-20'))).toEqual(['first done', 'last left-out']);
    expect(done(deep('2025-12-20'), tip('2026-02-03'))).toEqual(['first done', 'last done']);
    expect(done(tip('2026-02-03'))).toEqual(['first left-out', 'last done']);
    // A year before is another season's.
    expect(done(tip('2025-02-03'))).toEqual(['first left-out', 'last left-out']);
  });

  it('that was the first tells what comes without the last', () => {
    const { withoutLast, words } = plan({ today: day('2026-02-25'), stops: [deep('2025-12-20')] });
    // 182 days are left, 168 are the mean after a deep stop: better than a tip stop now.
    expect(withoutLast?.chanceLate).toBeLessThan(0.1);
    expect(words).toContain('If it is done today: the chance of being late is 78 %');
    expect(words).toContain(
      'Left as it is, the deep stop of 20 December 2025 counts: the chance of being late is',
    );
  });

  it('counts as the newest, when the last stop was done twice', () => {
    const { effect } = plan({ today: day('2026-03-01'), stops: [tip('2026-02-20'), tip('2026-02-03')] });
    expect(effect?.stopDay).toBe('2026-02-20');
  });

  it('deep in place of a tip stop takes longer', () => {
    const today = day('2026-03-01');
    const late = (stop: WrittenStop) => plan({ today, stops: [stop] }).effect?.chanceLate ?? 0;
    expect(late(deep('2026-02-03'))).toBeGreaterThan(0.9);
    expect(late(tip('2026-02-03'))).toBeLessThan(0.1);
  });

  it('deep where no figure is known says so', () => {
    const { effect, days, words } = plan({
      kind: 'zonal',
      today: day('2026-04-01'),
      stops: [deep('2026-03-05')],
    });
    expect([effect, days]).toEqual([null, null]);
    expect(words).toContain('is not known, so nothing can be said of the show');
  });

  it('for a later day than today is not yet done', () => {
    expect(states(plan({ today: day('2026-02-01'), stops: [tip('2026-02-03')] }))).toEqual([
      'first left-out',
      'last open',
    ]);
  });
});

describe('a plan and the records', () => {
  const record = (stopDay: string, days: number, plantId = 'p'): BloomRecord => ({
    plantId,
    kind: 'regal',
    variety: 'Violet One',
    depth: 'tip',
    stopDay: day(stopDay),
    firstFlowerDay: null,
    fullBloomDay: addDays(day(stopDay), days),
    seasonNotes: [],
    leftOut: null,
  });
  const ask = (today: string, records: readonly BloomRecord[], stops: readonly WrittenStop[]) =>
    stopPlan(
      { ...REGAL, variety: 'Violet One', today: day(today), stops },
      { defaults: DEFAULT_STOPS, records },
    ) as StopPlan;

  it('move next season’s last stop', () => {
    // (122.5 + 102) ÷ 2 = 112.25 days: earlier into bloom, so a later stop.
    const { planned, last } = ask('2025-11-01', [record('2025-02-01', 102)], [tip('2025-02-01')]);
    expect(planned.meanDays).toBeCloseTo(112.25, 10);
    expect(last.daysBeforeShow).toBeLessThan(135);
  });

  it('do not learn from the season they foresee, and say when it is in bloom', () => {
    const now = ask('2026-06-15', [record('2026-02-03', 110)], [tip('2026-02-03')]);
    expect(now.planned.meanDays).toBe(122.5);
    expect(now).toMatchObject({
      bloomedOn: '2026-05-24',
      words: 'In full bloom since 24 May 2026, 27 days before the show.',
    });
  });

  it('take full bloom from the photographs while none is noted, once the last stop is done', () => {
    const asSeen = (fullBloomSeen: string, stops: WrittenStop[], records: BloomRecord[] = []) =>
      stopPlan(
        {
          ...REGAL,
          variety: 'Violet One',
          today: day('2026-06-15'),
          stops,
          fullBloomSeen: day(fullBloomSeen),
        },
        { defaults: DEFAULT_STOPS, records },
      ) as StopPlan;
    const done = [tip('2026-02-03')];
    expect(asSeen('2026-05-24', done)).toMatchObject({
      bloomedOn: '2026-05-24',
      words: 'As the photographs show, in full bloom since about 24 May 2026, 27 days before the show.',
    });
    expect(asSeen('2026-05-30', done, [record('2026-02-03', 110)]).bloomedOn).toBe('2026-05-24');
    // A bloom from before the stop, and one with no stop done, is not the one planned for.
    expect(asSeen('2026-01-20', done).bloomedOn).toBeNull();
    expect(asSeen('2026-05-24', []).bloomedOn).toBeNull();
  });

  it('learn from other plants of the same season that have bloomed', () => {
    const now = ask('2026-06-15', [record('2026-01-20', 110, 'q')], [tip('2026-02-03')]);
    expect([now.planned.shares.own, now.bloomedOn]).toEqual([0.5, null]);
  });
});

describe('a plan goes by the calendar only', () => {
  it('from any show day as many days back, over leap days and year ends', () => {
    for (let k = 0; k < 1500; k++) {
      const showDay = addDays(day('2023-01-01'), k);
      const { last, steps } = plan({ showDay, today: addDays(showDay, -300) });
      expect(daysBetween(last.lastDay, showDay)).toBe(135);
      expect(daysBetween(steps[0]?.window.from as typeof SHOW, showDay)).toBe(186);
    }
  });
});
