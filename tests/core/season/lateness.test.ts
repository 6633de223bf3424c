import { describe, expect, it } from 'vitest';
import { DEFAULT_BELIEF, SURE_BELIEF, simulateGrowers, WORLDS } from './simulated-growers.ts';

const GROWERS = 10_000;

/** Within one in a hundred: a share of 10,000 wanders by 0.3 (of 10 %, one standard deviation) by chance alone. */
const one = (share: number, wanted: number) => expect(Math.abs(share - wanted)).toBeLessThan(0.01);

describe('the promise about being late, over 10,000 simulated growers', () => {
  it('holds with a known spread', () => {
    const tally = simulateGrowers(WORLDS['known spread'], SURE_BELIEF, {
      growers: GROWERS,
      records: 0,
      seed: 71,
    });
    one(tally.lateUnrounded, 0.1);
    // Whole days fall on the safe side, by up to one day's worth.
    one(tally.late, tally.said);
    expect(tally.late).toBeLessThan(0.1 + 0.01);
    expect(tally.said).toBeGreaterThan(0.1 - 0.02);
  });

  it.each([0, 1, 3, 8])(
    'holds for growers as the table expects them, with %i seasons on record',
    (records) => {
      const tally = simulateGrowers(WORLDS['as the table says'], DEFAULT_BELIEF, {
        growers: GROWERS,
        records,
        seed: 80 + records,
      });
      one(tally.lateUnrounded, 0.1);
      one(tally.late, tally.said);
      // Intervals of 90 % ± 2.
      expect(Math.abs(tally.meanHeld - 0.9)).toBeLessThan(0.02);
      expect(Math.abs(tally.nextHeld - 0.9)).toBeLessThan(0.02);
    },
  );
});

describe('what is learned', () => {
  it('comes near the truth with the seasons, though the table is three weeks off', () => {
    const off = [0, 3, 20].map(
      (records) =>
        simulateGrowers(WORLDS['table 3 weeks short'], DEFAULT_BELIEF, { growers: 1000, records, seed: 90 })
          .meanOffDays,
    );
    const [none, three, twenty] = off as [number, number, number];
    expect(none).toBe(21);
    expect(three).toBeLessThan(8);
    expect(twenty).toBeLessThan(2.5);
  });

  it('brings the share late down from most plants to about the accepted one', () => {
    const late = [0, 20].map(
      (records) =>
        simulateGrowers(WORLDS['table 3 weeks short'], DEFAULT_BELIEF, { growers: 2000, records, seed: 91 })
          .late,
    );
    expect(late[0]).toBeGreaterThan(0.7);
    expect(late[1]).toBeLessThan(0.13);
  });
});
