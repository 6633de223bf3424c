import { describe, expect, it } from 'vitest';
import { type Bloom, type BloomFacts, bloomOf, bloomShareOn } from '../../../core/bloom/bloom.ts';
import { bloomAgainstShow } from '../../../core/bloom/bloom-against-show.ts';
import { type BloomForm, bloomEvents, RISE_KINDS, shareOpen } from '../../../core/bloom/bloom-form.ts';
import { type BloomReading, bloomStretch, timedShares } from '../../../core/bloom/bloom-readings.ts';
import { expectedBloom } from '../../../core/bloom/expected-bloom.ts';
import { weightedQuantiles } from '../../../core/bloom/weighted-quantile.ts';
import { addDays, day, daysBetween } from '../../../core/day/day.ts';

const FIRST = day('2026-03-01');
const FORM: BloomForm = { kind: 'logistic', halfDays: 45, riseDays: 20, lastsDays: 20, fallDays: 24 };
const FULL_SHARE = 0.4;

/** Weekly readings without noise, up to a day. */
function weekly(lastDays: number): BloomReading[] {
  return Array.from({ length: Math.floor(lastDays / 7) + 1 }, (_, week) => ({
    day: addDays(FIRST, 7 * week),
    share: FULL_SHARE * shareOpen(FORM, 7 * week),
    plusMinus: 0.04,
  }));
}

function facts(readings: readonly BloomReading[], more: Partial<BloomFacts> = {}): BloomFacts {
  return { readings, startsAgain: [], today: day('2026-12-31'), expected: expectedBloom(21), ...more };
}

function told(readings: readonly BloomReading[], more: Partial<BloomFacts> = {}): Bloom {
  const bloom = bloomOf(facts(readings, more));
  if (!bloom.ok) throw new Error(bloom.hint);
  return bloom;
}

const EVENTS = [
  ['firstColour', 'firstColourDays'],
  ['half', 'halfDays'],
  ['full', 'fullDays'],
] as const;

const off = (date: { day: ReturnType<typeof day> }, days: number) =>
  Math.abs(daysBetween(FIRST, date.day) - days);

describe('a bloom’s form', () => {
  it.each(RISE_KINDS)('that is %s has 5 % at first colour, half at the half, 80 % at full bloom', (kind) => {
    const slow = { ...FORM, kind, lastsDays: 300 };
    const events = bloomEvents(slow);
    expect(shareOpen(slow, events.firstColourDays)).toBeCloseTo(0.05, 6);
    expect(shareOpen(slow, events.halfDays)).toBeCloseTo(0.5, 6);
    expect(shareOpen(slow, events.fullDays)).toBeCloseTo(0.8, 6);
    expect(shareOpen(slow, events.fadingDays)).toBeCloseTo(0.8, 2);
    expect(events.fullDays - events.firstColourDays).toBeCloseTo(slow.riseDays, 9);
  });

  it('is Verhulst’s logistic while nothing fades', () => {
    // Verhulst (1838): x / (1 − x) grows by one factor a day.
    const slow = { ...FORM, lastsDays: 2000 };
    const odds = [40, 41, 42].map((days) => shareOpen(slow, days) / (1 - shareOpen(slow, days)));
    expect((odds[1] as number) / (odds[0] as number)).toBeCloseTo(
      (odds[2] as number) / (odds[1] as number),
      9,
    );
  });
});

describe('the days of a bloom', () => {
  it('are found to within 2 days on clean weekly readings', () => {
    const bloom = told(weekly(120));
    const events = bloomEvents(FORM);
    expect(off(bloom.half, events.halfDays)).toBeLessThanOrEqual(2);
    expect(off(bloom.full, events.fullDays)).toBeLessThanOrEqual(3);
    expect(off(bloom.firstColour, events.firstColourDays)).toBeLessThanOrEqual(3);
    expect(bloom.stage).toBe('fading');
    expect(bloom.fading?.isPast).toBe(true);
    expect(bloom.fullShare.low90).toBeLessThan(FULL_SHARE);
    expect(bloom.fullShare.high90).toBeGreaterThan(FULL_SHARE);
  });

  it('lie in their intervals, which a forecast has wider than a look back', () => {
    const before = told(weekly(42));
    const after = told(weekly(120));
    const width = ({ full }: Bloom) => daysBetween(full.from90, full.to90);
    expect(before.full.isPast).toBe(false);
    expect(before.fading).toBeNull();
    expect(width(before)).toBeGreaterThan(width(after));
    expect(before.full.from90 <= addDays(FIRST, 54) && addDays(FIRST, 54) <= before.full.to90).toBe(true);
  });

  it('are given as whole days that hold nine tenths of what is believed, not a day more', () => {
    // Each of the days is held from half a day before its middle to half a day after.
    const held = [42, 56, 70, 84].flatMap((lastDays) => {
      const bloom = told(weekly(lastDays));
      return EVENTS.map(([date, event]) => {
        const [from, to] = [bloom[date].from90, bloom[date].to90].map((one) => daysBetween(FIRST, one));
        return bloom.belief.reduce((sum, { form, weight }) => {
          const days = bloomEvents(form)[event];
          return (from as number) - 0.5 <= days && days <= (to as number) + 0.5 ? sum + weight : sum;
        }, 0);
      });
    });
    const mean = held.reduce((sum, one) => sum + one, 0) / held.length;
    expect(mean).toBeGreaterThan(0.88);
    expect(mean).toBeLessThan(0.92);
  });

  it('are not named to the day while nobody could', () => {
    const early = told(weekly(42));
    expect(early.sureness).toBe('unsure');
    expect(early.words).toMatch(/^Colour shows, but full bloom cannot be told closer than /);
    expect(told(weekly(75)).words).toMatch(/^In full bloom since about /);
  });

  it('move with the season and do not hang on the order of the sittings', () => {
    const readings = weekly(90);
    const later = readings.map((reading) => ({ ...reading, day: addDays(reading.day, 30) }));
    const [bloom, moved, shuffled] = [told(readings), told(later), told([...readings].reverse())];
    expect(moved.full.day).toBe(addDays(bloom.full.day, 30));
    expect(shuffled.full).toEqual(bloom.full);
  });

  it('hang on the pace, not on how much of the flower a camera sees', () => {
    const readings = weekly(90);
    const halfSeen = readings.map((one) => ({ ...one, share: one.share / 2, plusMinus: 0.02 }));
    expect(Math.abs(daysBetween(told(readings).full.day, told(halfSeen).full.day))).toBeLessThanOrEqual(2);
  });

  it('are wider where readings scatter more than they say', () => {
    const jumping = weekly(90).map((one, k) => ({
      ...one,
      share: Math.max(0, one.share + (k % 2 === 0 ? 0.08 : -0.08)),
    }));
    const width = ({ half }: Bloom) => daysBetween(half.from90, half.to90);
    expect(width(told(jumping))).toBeGreaterThan(width(told(weekly(90))));
  });

  it('are not told without a sitting or without colour', () => {
    expect(bloomOf(facts([]))).toMatchObject({ ok: false, reason: 'no-sitting' });
    const green = weekly(120).map((one) => ({ ...one, share: 0.02 }));
    expect(bloomOf(facts(green))).toMatchObject({ ok: false, reason: 'no-colour' });
  });

  it('begin anew after a stop and after heads were taken off', () => {
    const readings = weekly(120);
    const taken = day('2026-04-20');
    expect(bloomStretch(readings, [taken], day('2026-05-10')).map((one) => one.day)).toEqual([
      '2026-04-26',
      '2026-05-03',
      '2026-05-10',
    ]);
    expect(bloomStretch(readings, [day('2027-01-01')], day('2026-03-10'))).toHaveLength(2);
  });

  it('take no share below 0, above 1 or not known', () => {
    for (const share of [-0.1, 1.2, Number.NaN]) {
      expect(() => timedShares([{ day: FIRST, share, plusMinus: null }])).toThrow(
        'Expected a share from 0 to 1',
      );
    }
  });

  it('rest on the plant’s earlier blooms where there are some', () => {
    const lesson = { fullShare: 0.2, riseDays: 30 };
    const expected = expectedBloom(21, [lesson, lesson, lesson]);
    expect(Math.exp(expected.logRiseDays.mean)).toBeGreaterThan(28);
    expect(expected.restsOn).toBe('plant');
    expect(told(weekly(42), { expected }).why).toContain('how this plant bloomed before');
  });

  it('are read off as a curve with a range', () => {
    const { share, low90, high90 } = bloomShareOn(told(weekly(120)), 45);
    expect(share).toBeGreaterThan(0.17);
    expect(share).toBeLessThan(0.23);
    expect(low90).toBeLessThanOrEqual(share);
    expect(high90).toBeGreaterThanOrEqual(share);
  });
});

describe('a bloom against the show', () => {
  const show = (days: number) => ({
    day: addDays(FIRST, days),
    lastsDays: 20,
    kind: 'regal' as const,
    today: day('2026-04-01'),
  });
  const bloom = told(weekly(75));

  it('is in time when the show falls into full bloom', () => {
    const against = bloomAgainstShow(bloom, show(64));
    expect(against.verdict).toBe('in-time');
    expect(against.takeOffUntil).toBeNull();
    expect(against.words).toContain('In time');
  });

  it('is early when full bloom is over before: the first heads are taken off', () => {
    const against = bloomAgainstShow(bloom, show(95));
    expect(against.verdict).toBe('early');
    // Full on day 51 and 20 days of it: the middle lies on day 61.
    expect(Math.abs(against.daysEarly - 34)).toBeLessThanOrEqual(3);
    // Its rise of 20 days and half of full bloom before the show, as it is known.
    expect(Math.abs(daysBetween(FIRST, against.takeOffUntil as typeof FIRST) - 65)).toBeLessThanOrEqual(4);
    expect(against.words).toMatch(/^About \d+ days early .*Take off the first heads until/);
    expect(against.standing).toContain('common practice, no source');
  });

  it('advises nothing to be taken off when it is late, or too late for others to follow', () => {
    const late = bloomAgainstShow(bloom, show(40));
    expect(late.verdict).toBe('late');
    expect(late.words).toContain('Take nothing off');
    const tooLate = bloomAgainstShow(bloom, { ...show(95), today: day('2026-05-20') });
    expect(tooLate.takeOffUntil).toBeNull();
    expect(tooLate.words).toContain('too late to take off heads');
  });

  it('says so while it cannot be told', () => {
    const against = bloomAgainstShow(told(weekly(42)), { ...show(50), lastsDays: 1 });
    expect(against.verdict).toBe('unsure');
    expect(against.words).toContain('cannot be told yet');
    const { early, inTime, late } = against.chances;
    expect(early + inTime + late).toBeCloseTo(1, 9);
  });
});

describe('weighted quantiles', () => {
  it('take the value below which the share lies', () => {
    const values = [3, 1, 2].map((value) => ({ value, weight: 1 }));
    expect(weightedQuantiles(values, [0.5, 0.05, 0.95])).toEqual([2, 1, 3]);
    expect(weightedQuantiles([...values, { value: 9, weight: 97 }], [0.5])).toEqual([9]);
  });
});
