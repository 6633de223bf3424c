import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import type { LogEntry, LogKind } from '../../../core/season/log-entry.ts';
import { seasonYear, type YearQuestion, type YearSitting } from '../../../core/season/season-year.ts';
import { type StopPlan, stopPlan } from '../../../core/season/stop-plan.ts';

const SHOW = { id: 's', name: 'Summer show', day: day('2026-06-20'), place: '', rules: '', classes: [] };
const STOPS = [{ day: day('2026-02-08'), depth: 'tip' as const }];

const entry = (kind: LogKind, on: string, text = ''): LogEntry => ({
  id: `${kind} ${on}`,
  plantId: 'p',
  kind,
  day: day(on),
  text,
});

const sitting = (on: string, roundness: number | null, setAside: string | null = null): YearSitting => ({
  sittingId: on,
  day: day(on),
  roundness: roundness === null ? null : { value: roundness, plusMinus: 2 },
  symmetry: null,
  lopsidedness: null,
  setAside,
});

function year(changes: Partial<YearQuestion> = {}) {
  const plan = stopPlan(
    { plantId: 'p', kind: 'regal', variety: '', showDay: SHOW.day, today: SHOW.day, stops: STOPS },
    { defaults: DEFAULT_STOPS, records: [] },
  ) as StopPlan;
  return seasonYear({
    plantId: 'p',
    kind: 'regal',
    variety: '',
    from: day('2025-09-01'),
    to: day('2026-08-31'),
    sittings: [sitting('2026-06-14', 91), sitting('2026-02-10', 84)],
    stops: STOPS,
    log: [entry('full-bloom', '2026-06-12'), entry('show-result', '2026-06-20', 'Second')],
    show: SHOW,
    plan,
    ...changes,
  });
}

describe('a plant’s year', () => {
  it('puts bloom, shape near the show and the result together', () => {
    expect(year().bloom).toEqual({
      firstFlowerDay: null,
      fullBloomDay: '2026-06-12',
      daysFromLastStop: 124,
      daysAfterShow: -8,
    });
    expect(year().atShow?.day).toBe('2026-06-14');
    expect(year().result?.text).toBe('Second');
    expect(year().sittings.map(({ day: on }) => on)).toEqual(['2026-02-10', '2026-06-14']);
  });

  it('says what the facts say', () => {
    expect(year().lessons).toEqual([
      'In full bloom on 12 June 2026, 8 days before the show: in time.',
      'From the last stop to full bloom it took 124 days, within what was expected (106 to 139, 123 on average). The next plan counts it as your own record, unless a note sets it aside.',
      'The last stop was done 3 days after the planned days.',
      'Roundness near the show 91.0 ± 2.0, on 14 June 2026: rounder by 7.0 since 10 February 2026.',
    ]);
  });

  it('says by how much it was late, and what would have met the show', () => {
    expect(year({ log: [entry('full-bloom', '2026-06-25')] }).lessons[0]).toBe(
      'In full bloom on 25 June 2026, 5 days after the show: too late. The last stop 5 days sooner, all else alike, would have met it.',
    );
  });

  it('says when it was so early that bloom was over', () => {
    // Full bloom from 4 to 17 June, a fortnight: over by three days.
    expect(year({ log: [entry('full-bloom', '2026-06-04')] }).lessons[0]).toBe(
      'In full bloom on 4 June 2026, 16 days before the show: early. The last stop 3 days later, or taking off the first bloom, would have kept it, if full bloom lasts 14 days.',
    );
  });

  it('says what is not known instead of guessing', () => {
    const bare = year({ log: [], sittings: [sitting('2026-02-10', 84)], plan: null, show: null });
    expect(bare.bloom).toEqual({
      firstFlowerDay: null,
      fullBloomDay: null,
      daysFromLastStop: null,
      daysAfterShow: null,
    });
    expect(bare.lessons).toEqual([
      'The day of full bloom is not noted, so nothing can be learned of how long it takes: note it next time.',
    ]);
    expect(year({ sittings: [sitting('2026-02-10', 84)] }).lessons.at(-1)).toBe(
      'No photo near the show tells its shape.',
    );
  });

  it('passes over a photo that is kept out of the trend, and calls no change no change', () => {
    const limp = sitting('2026-06-18', 70, 'Limp from drought.');
    expect(
      year({ sittings: [sitting('2026-02-10', 90), sitting('2026-06-14', 91), limp] }).lessons.at(-1),
    ).toBe('Roundness near the show 91.0 ± 2.0, on 14 June 2026: no change since 10 February 2026.');
  });

  it('leaves other years out', () => {
    const found = year({
      log: [entry('full-bloom', '2025-06-12')],
      stops: [...STOPS, { day: day('2025-02-08'), depth: 'tip' }],
    });
    expect(found.bloom.fullBloomDay).toBeNull();
    expect(found.stops).toEqual(STOPS);
  });
});
