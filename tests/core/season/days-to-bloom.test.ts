import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../../core/day/day.ts';
import type { BloomRecord } from '../../../core/season/bloom-record.ts';
import { type DaysToBloom, daysToBloom } from '../../../core/season/days-to-bloom.ts';
import { DEFAULT_STOPS } from '../../../core/season/default-stops.ts';
import { chanceBelow } from '../../../core/season/normal-gamma.ts';
import { withOwnFigures } from '../../../core/season/own-defaults.ts';

const STOP = day('2025-06-01');

function record(days: number, changes: Partial<BloomRecord> = {}): BloomRecord {
  return {
    plantId: 'other plant',
    kind: 'fuchsia-single',
    variety: 'Evening Bell',
    depth: 'tip',
    stopDay: STOP,
    firstFlowerDay: null,
    fullBloomDay: addDays(STOP, days),
    seasonNotes: [],
    leftOut: null,
    ...changes,
  };
}

const QUESTION = { plantId: 'p', kind: 'fuchsia-single', variety: 'Evening Bell', depth: 'tip' } as const;

function learned(records: readonly BloomRecord[], own: Record<string, number> = {}): DaysToBloom {
  const found = daysToBloom(QUESTION, { defaults: withOwnFigures(DEFAULT_STOPS, own), records });
  if (!found.ok) throw new Error(found.hint);
  return found;
}

describe('days from the last stop to full bloom', () => {
  it('are the table’s while there is no record', () => {
    const found = learned([]);
    expect(found.meanDays).toBe(60);
    expect(found.shares).toEqual({ default: 1, own: 0, kind: 0 });
    expect(found.shareInWords).toBe('All default: you have no record of this kind and stop yet.');
    expect(found.standing).toContain('fuchsiaclark.com');
  });

  it('spread as the table says: its standard deviation is the next plant’s', () => {
    const { belief } = learned([]);
    // Variance of the foreseen days by summing over the distribution, in steps of 0.1 day far out into its tails.
    let variance = 0;
    for (let at = -400; at < 520; at += 0.1) {
      variance += (chanceBelow(belief, at + 0.1) - chanceBelow(belief, at)) * (at + 0.05 - 60) ** 2;
    }
    expect(Math.sqrt(variance)).toBeCloseTo(5.25, 1);
  });

  // (2 × 60 + 66 + 70 + 68) ÷ 5, by hand.
  it('are the worked example’s where the default counts as two records', () => {
    const found = learned([record(66), record(70), record(68)], { countsAs: 2 });
    expect(found.meanDays).toBeCloseTo(64.8, 10);
    expect(found.sumInWords).toBe('(2 × 60 + 66 + 70 + 68) ÷ 5 = 64.8 days');
    expect(found.shareInWords).toBe('40 % default, 60 % your own 3 records.');
  });

  it.each([
    [1, 'Half default, half your own record.'],
    [2, 'One third default, two thirds your own 2 records.'],
    [3, 'One quarter default, three quarters your own 3 records.'],
    [9, '10 % default, 90 % your own 9 records.'],
  ])('say how much is own with %i on record', (count, words) => {
    expect(learned(Array.from({ length: count }, () => record(65))).shareInWords).toBe(words);
  });

  it('count other varieties of the kind for less, and together for two at most', () => {
    const other = (count: number) =>
      Array.from({ length: count }, () => record(72, { variety: 'Tall Lamp' }));
    // (60 + ½ × 72) ÷ 1.5
    expect(learned(other(1)).meanDays).toBeCloseTo(64, 10);
    expect(learned(other(1)).shareInWords).toBe(
      'Two thirds default, one third your record of other varieties of the kind.',
    );
    // (60 + 2 × 72) ÷ 3, however many.
    expect(learned(other(4)).meanDays).toBeCloseTo(68, 10);
    expect(learned(other(40)).meanDays).toBeCloseTo(68, 10);
    expect(learned([...other(40), record(60)]).sumInWords).toBe('(1 × 60 + 2 × 72 + 60) ÷ 4 = 66 days');
  });

  it('take a plant’s own record for its own, whatever the variety is called', () => {
    expect(learned([record(72, { plantId: 'p', variety: '' })]).shares.own).toBe(0.5);
    expect(learned([record(72, { variety: ' evening bell ' })]).shares.own).toBe(0.5);
  });

  it('do not ask records of another kind, another depth, or ones left out', () => {
    const found = learned([
      record(90, { kind: 'fuchsia-double' }),
      record(90, { depth: 'deep' }),
      record(90, { leftOut: 'Set aside by your note: cold dark winter' }),
    ]);
    expect(found.meanDays).toBe(60);
    expect(found.leftOut.map(({ leftOut }) => leftOut)).toEqual(['Set aside by your note: cold dark winter']);
  });

  it('grow narrower with the records', () => {
    const width = ({ next90Days: [low, high] }: DaysToBloom) => high - low;
    const many = learned([62, 65, 63, 66, 64, 65].map((days) => record(days)));
    expect(width(many)).toBeLessThan(width(learned([])));
  });
});

describe('a kind and depth that no figure is known for', () => {
  const ask = (records: readonly BloomRecord[], own: Record<string, number> = {}) =>
    daysToBloom({ ...QUESTION, kind: 'other' }, { defaults: withOwnFigures(DEFAULT_STOPS, own), records });
  const of = (days: number) => record(days, { kind: 'other' });

  it('says so and what to do', () => {
    expect(ask([of(50), of(52)])).toEqual({
      ok: false,
      reason: 'no-figure',
      hint: 'How long this kind takes from a tip stop to full bloom is not known. Set a figure of your own, or note stops and full bloom: after 3 seasons your own records tell it.',
    });
  });

  it('is told by three records of the grower’s own', () => {
    const found = ask([of(50), of(52), of(57)]) as DaysToBloom;
    expect(found.meanDays).toBeCloseTo(53, 10);
    expect(found.shareInWords).toBe('Your own 3 records alone.');
    // The plain t interval: s² = 13, s ÷ √3 = 2.082, t of 2 degrees at 0.95 is 2.920 (tables).
    expect(found.mean90Days[1]).toBeCloseTo(53 + 2.92 * 2.0817, 2);
  });

  it('does not take three records that are all alike for certainty', () => {
    const [low, high] = (ask([of(50), of(50), of(50)]) as DaysToBloom).next90Days;
    expect(high - low).toBeGreaterThan(8);
  });

  it('takes a figure of the grower’s own as its default', () => {
    const found = ask([], { 'other.tip.meanDays': 49 }) as DaysToBloom;
    expect(found.meanDays).toBe(49);
    expect(found.standing).toBe('Your own figure. Before, none was known.');
  });
});
