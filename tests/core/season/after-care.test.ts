import { describe, expect, it } from 'vitest';
import type { BloomAgainstShow } from '../../../core/bloom/bloom-against-show.ts';
import { addDays, day } from '../../../core/day/day.ts';
import { USUAL_RHYTHM } from '../../../core/light/next-turn.ts';
import { PLANT_KINDS } from '../../../core/plant.ts';
import { workOf } from '../../../core/season/after-care.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import type { LogEntry, LogKind } from '../../../core/season/log-entry.ts';
import type { Show } from '../../../core/season/show.ts';
import { stopPlan } from '../../../core/season/stop-plan.ts';
import {
  type PlantSeason,
  type SeenBloom,
  USUAL_WORK_RHYTHM,
  type Work,
  type WorkKind,
} from '../../../core/season/work.ts';
import { type WorkWord, workNow } from '../../../core/season/work-now.ts';

const TODAY = day('2026-01-10');
const SHOW: Show = {
  id: 'summer',
  name: 'Summer show',
  day: day('2026-06-20'),
  place: '',
  rules: '',
  classes: [],
};

const entry = (kind: LogKind, on: string): LogEntry => ({
  id: `${kind} ${on}`,
  plantId: 'p',
  kind,
  day: day(on),
  text: '',
});

function season(changes: Partial<PlantSeason> = {}, today = TODAY): PlantSeason {
  const plant: PlantSeason = {
    plantId: 'p',
    kind: 'regal',
    fromDay: day('2026-01-01'),
    show: SHOW,
    plan: null,
    stops: [],
    log: [],
    sittingDays: [],
    turnDays: [],
    turnRhythm: USUAL_RHYTHM,
    rhythm: USUAL_WORK_RHYTHM,
    ownWork: [],
    ...changes,
  };
  const plan = stopPlan(
    { plantId: 'p', kind: plant.kind, variety: '', showDay: SHOW.day, today, stops: plant.stops },
    { defaults: DEFAULT_STOPS, records: [] },
  );
  return { ...plant, plan: plan.ok ? plan : null };
}

const WHOLE = { from: day('2025-12-01'), to: day('2026-08-31') };
const work = (changes: Partial<PlantSeason> = {}, today = TODAY, range = WHOLE) =>
  workOf(season(changes, today), today, range);
const of = (kind: WorkKind, list: readonly Work[]) => list.filter((one) => one.kind === kind);
const dates = (list: readonly Work[]) => list.map((one) => [one.day, one.dueBy]);

describe('after a deep stop', () => {
  const list = work({ stops: [{ day: day('2026-01-08'), depth: 'deep' }] });

  it('it is kept dry for about a week, then watered little', () => {
    expect(dates(of('keep-dry', list))).toEqual([['2026-01-08', '2026-01-14']]);
    expect(of('keep-dry', list)[0]?.what).toBe(
      'No water until 15 January 2026, 4–5 days at the least; never let the roots turn dust-dry.',
    );
    expect(of('keep-dry', list)[0]?.standing).toContain('Common practice, no source');
    expect(of('water-little', list)[0]?.day).toBe('2026-01-15');
  });

  // Hausbeck and Pennypacker (1991), Plant Disease 75:1168: less stem blight after one dry day, less still after three.
  it('the cuts are kept airy for three days', () => {
    expect(dates(of('keep-airy', list))).toEqual([['2026-01-08', '2026-01-10']]);
    expect(of('keep-airy', list)[0]?.standing).toContain('Hausbeck and Pennypacker (1991)');
    expect(of('keep-airy', list)[0]?.caution).toContain('leave no stubs');
  });

  it('breaks are looked for after one to two weeks', () => {
    expect(dates(of('look-for-breaks', list))).toEqual([['2026-01-15', '2026-01-22']]);
  });
});

describe('after a tip stop', () => {
  const list = work({ stops: [{ day: day('2026-02-02'), depth: 'tip' }] });

  it('nothing is said of water', () => {
    expect([...of('keep-dry', list), ...of('water-little', list)]).toEqual([]);
    expect(of('keep-airy', list)).toHaveLength(1);
  });

  it('a note that breaks were seen or tips taken does the look for breaks', () => {
    const noted = work({
      stops: [{ day: day('2026-02-02'), depth: 'tip' }],
      log: [entry('took-missed-tips', '2026-02-11')],
    });
    expect(of('look-for-breaks', noted)[0]?.doneOn).toBe('2026-02-11');
  });
});

describe('the plan’s stops', () => {
  it('are work on the days of their windows, with the caution, until they are of no more use', () => {
    const stops = of('stop', work({}, day('2026-01-02')));
    expect(stops.map(({ key, day: from, dueBy, until }) => [key, from, dueBy, until])).toEqual([
      ['p:stop:first:2026-06-20', '2025-12-16', '2025-12-22', '2026-01-08'],
      ['p:stop:last:2026-06-20', '2026-01-30', '2026-02-05', '2026-02-18'],
    ]);
    for (const { caution } of stops) expect(caution).toContain('cannot be undone');
  });

  it('are no more work once they are written down', () => {
    expect(
      of('stop', work({ stops: [{ day: day('2026-01-30'), depth: 'tip' }] }, day('2026-02-01'))),
    ).toEqual([]);
  });
});

describe('weekly work', () => {
  it('is counted from the last time it was done, to the show', () => {
    const list = work({ sittingDays: [day('2026-01-07'), day('2025-12-31')], turnDays: [day('2026-01-09')] });
    expect(of('photograph', list)[0]?.day).toBe('2026-01-14');
    expect(of('photograph', list).at(-1)?.day).toBe('2026-06-17');
    expect(of('photograph', list)).toHaveLength(23);
    expect(of('turn', list)[0]?.day).toBe('2026-01-16');
    expect(of('photograph', list)[0]?.what).toContain('before you turn it');
  });

  it('is counted from the season’s begin while nothing is recorded', () => {
    expect(of('look-over', work())[0]?.day).toBe('2026-01-01');
  });

  it('never waits twice', () => {
    const today = day('2026-03-03');
    const states = workNow(of('photograph', work({}, today)), [], today).map(({ state }) => state);
    expect(states.filter((state) => state === 'due' || state === 'overdue')).toHaveLength(1);
  });

  it('names its sources and promises nothing for the cold', () => {
    const [look] = of('look-over', work());
    expect(look?.standing).toContain('Sirjusingh and Sutton (1996)');
    expect(look?.why).toContain('cold does not promise safety');
  });

  it('is not asked for where the grower wants no reminder', () => {
    const list = work({
      turnRhythm: { ...USUAL_RHYTHM, everyDays: null },
      rhythm: { photographDays: null, lookOverDays: null },
    });
    expect([...of('turn', list), ...of('photograph', list), ...of('look-over', list)]).toEqual([]);
  });
});

describe('what was seen', () => {
  it('whitefly and grey mould are looked for again, with the words on sprays and no product', () => {
    const list = work({
      log: [entry('seen-whitefly', '2026-01-05'), entry('seen-grey-mould', '2026-01-06')],
    });
    expect(of('look-again', list).map(({ day: on }) => on)).toEqual(['2026-01-12', '2026-01-13']);
    for (const { caution } of of('look-again', list)) {
      expect(caution).toBe(
        'Identify it first. If you think of a spray, read its label, follow local law, and keep children and animals away.',
      );
    }
  });

  it('early bloom is to be taken off until a month before the show', () => {
    const today = day('2026-05-10');
    const early = {
      stops: [{ day: day('2026-01-30'), depth: 'tip' as const }],
      log: [entry('first-flower', '2026-05-08')],
    };
    const [take] = of('take-off-bloom', work(early, today));
    expect([take?.day, take?.until]).toEqual(['2026-05-08', '2026-05-21']);
    expect(take?.standing).toContain('common practice, no source');
    const late = { ...early, log: [entry('first-flower', '2026-05-28')] };
    expect(of('take-off-bloom', work(late, day('2026-05-29')))).toEqual([]);
    const done = { ...early, log: [...early.log, entry('bloom-taken-off', '2026-05-09')] };
    expect(of('take-off-bloom', work(done, today))[0]?.doneOn).toBe('2026-05-09');
  });
});

describe('a bloom that the photos show', () => {
  const noted = {
    stops: [{ day: day('2026-01-30'), depth: 'tip' as const }],
    log: [entry('first-flower', '2026-05-08')],
  };
  const seen = (verdict: BloomAgainstShow['verdict'], chance: number, isTold = true): SeenBloom => {
    const rest = (1 - chance) / 2;
    return {
      day: day('2026-05-09'),
      isTold,
      fullOn: null,
      againstShow: {
        verdict,
        daysEarly: 6,
        daysEarly90: [3, 9],
        chances: {
          early: verdict === 'early' ? chance : rest,
          inTime: verdict === 'in-time' ? chance : rest,
          late: verdict === 'late' ? chance : rest,
        },
        takeOffUntil: verdict === 'early' ? day('2026-05-28') : null,
        words: 'About 6 days early.',
        standing: 'Common practice, no source.',
      },
    };
  };
  const taking = (bloom: SeenBloom) => of('take-off-bloom', work({ ...noted, bloom }, day('2026-05-10')));

  it('early for sure, has its heads taken off until the day of its own pace', () => {
    const [take, ...others] = taking(seen('early', 0.9));
    expect(others).toEqual([]);
    expect(take).toMatchObject({
      key: 'p:take-off-bloom:summer',
      what: 'Take off the first heads until 28 May 2026.',
      dueBy: '2026-05-28',
      until: '2026-05-28',
      why: 'About 6 days early.',
    });
  });

  it('in time for sure, keeps its heads though a first flower was noted', () => {
    expect(taking(seen('in-time', 0.9))).toEqual([]);
  });

  it('before the last stop is given, is left to that stop', () => {
    const bloom = seen('early', 0.9);
    expect(of('take-off-bloom', work({ ...noted, stops: [], bloom }, day('2026-01-10')))).toEqual([]);
  });

  it('told too loosely, leaves what was noted to speak', () => {
    for (const bloom of [seen('early', 0.7), seen('in-time', 0.7), seen('early', 0.9, false)]) {
      expect(taking(bloom).map(({ until }) => until)).toEqual(['2026-05-21']);
    }
  });
});

describe('the grower’s own notes', () => {
  const FEED = {
    id: 'f',
    kind: 'feed',
    day: day('2026-03-01'),
    everyDays: 10,
    untilDay: day('2026-03-31'),
    text: 'Feed, half strength',
  } as const;

  it('come round as noted', () => {
    const list = of('feed', work({ ownWork: [FEED], log: [entry('fed', '2026-03-12')] }));
    expect(list.map(({ day: on, doneOn }) => [on, doneOn])).toEqual([
      ['2026-03-01', null],
      ['2026-03-11', '2026-03-12'],
      ['2026-03-21', null],
      ['2026-03-31', null],
    ]);
    expect(list[0]?.caution).toBe('Read the label of what you feed.');
  });

  it('that come round every 0 days are a mistake of ours', () => {
    expect(() => work({ ownWork: [{ ...FEED, everyDays: 0 }] })).toThrow(
      'Expected a positive whole number for everyDays but received 0',
    );
  });

  it('once wait for as long as they are told', () => {
    const once = { ...FEED, kind: 'pot-on', everyDays: null, untilDay: null } as const;
    expect(of('pot-on', work({ ownWork: [once] }))).toMatchObject([{ day: '2026-03-01', until: null }]);
  });
});

describe('all work', () => {
  it('has a key of its own that stays when it is reckoned again', () => {
    const stops = [{ day: day('2026-01-08'), depth: 'deep' as const }];
    const keys = work({ stops }).map(({ key }) => key);
    expect(new Set(keys).size).toBe(keys.length);
    expect(work({ stops }, addDays(TODAY, 3)).map(({ key }) => key)).toEqual(keys);
  });

  it('is listed for the days asked for, in order', () => {
    const range = { from: day('2026-01-08'), to: day('2026-01-14') };
    const list = work({ stops: [{ day: day('2026-01-08'), depth: 'deep' }] }, TODAY, range);
    expect(list.length).toBeGreaterThan(4);
    for (const { day: on, until } of list) {
      expect(on <= range.to && (until === null || until >= range.from)).toBe(true);
    }
    expect(list.map((one) => one.day)).toEqual(list.map((one) => one.day).sort());
  });

  it('with a blade has its caution for every kind of plant, and names no product', () => {
    for (const kind of PLANT_KINDS) {
      for (const { kind: what, caution } of work({
        kind,
        stops: [{ day: day('2026-01-08'), depth: 'tip' }],
      })) {
        if (what === 'stop' || what === 'look-for-breaks') expect(caution).toContain('away from your');
      }
    }
  });
});

describe('work as it stands today', () => {
  const [dry] = of('keep-dry', work({ stops: [{ day: day('2026-01-08'), depth: 'deep' }] })) as [Work];
  const [photo] = of('photograph', work()) as [Work];
  const stands = (one: Work, today: string, ...words: WorkWord[]) =>
    workNow([one], words, day(today))[0] as ReturnType<typeof workNow>[number];

  it('is to come, due, overdue and lapses by itself', () => {
    expect(stands(dry, '2026-01-07').state).toBe('to-come');
    expect(stands(dry, '2026-01-14').state).toBe('due');
    expect(stands(dry, '2026-01-15')).toMatchObject({
      state: 'lapsed',
      stateInWords: 'Its time ended on 14 January 2026. There is nothing to make up.',
    });
    expect(stands(photo, '2026-01-02')).toMatchObject({
      state: 'overdue',
      stateInWords: 'It was due by 1 January 2026.',
    });
    expect(stands(photo, '2026-01-08').state).toBe('lapsed');
  });

  it('can be done, moved and skipped with a reason; the last word holds', () => {
    const { key } = photo;
    expect(stands(photo, '2026-01-03', { key, said: 'done', day: day('2026-01-02') }).stateInWords).toBe(
      'Done on 2 January 2026.',
    );
    expect(
      stands(photo, '2026-01-03', { key, said: 'skipped', day: day('2026-01-02'), reason: 'away' }),
    ).toMatchObject({ state: 'skipped', stateInWords: 'Skipped: away' });
    const moved = stands(
      photo,
      '2026-01-03',
      { key, said: 'done', day: day('2026-01-02') },
      { key, said: 'moved', day: day('2026-01-10') },
    );
    expect(moved).toMatchObject({
      state: 'to-come',
      day: '2026-01-10',
      dueBy: '2026-01-10',
      until: '2026-01-10',
      movedFrom: '2026-01-01',
    });
  });

  it('moved sooner is due sooner and as long of use as before', () => {
    const moved = stands(dry, '2026-01-06', { key: dry.key, said: 'moved', day: day('2026-01-06') });
    expect(moved).toMatchObject({ state: 'due', dueBy: '2026-01-12', until: '2026-01-14' });
  });

  it('is not touched by words on other work', () => {
    expect(stands(photo, '2026-01-01', { key: 'other', said: 'done', day: TODAY }).state).toBe('due');
  });
});
