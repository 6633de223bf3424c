import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays, type Day, day } from '../../../core/day/day.ts';
import { LEDGER_DAYS, lightLedger, type TurnEvent } from '../../../core/light/light-ledger.ts';

const START = day('2026-03-01');

/** Turned to each azimuth in turn, a week each; asked on the day the last week is over. */
function weeks(...azimuths: number[]) {
  const turns = azimuths.map((facesLightDeg, k) => ({ day: addDays(START, 7 * k), facesLightDeg }));
  return lightLedger(turns, addDays(START, 7 * azimuths.length), null);
}

const facedDays = (ledger: ReturnType<typeof weeks>) => ledger.sides.map(({ daysFaced }) => daysFaced);
const lightDays = (ledger: ReturnType<typeof weeks>) =>
  ledger.sides.map((side) => Number(side.lightDays.toFixed(2)));

describe('the light ledger', () => {
  it('knows nothing before the first turn, and says so', () => {
    const ledger = lightLedger([], START);
    expect(ledger).toMatchObject({ nowFacesDeg: null, sinceDay: null, gapAzimuthDeg: null, evenness: null });
    expect(ledger.why).toContain('No turn is on record yet');
  });

  it('counts whole days by date for each eighth', () => {
    const ledger = weeks(0, 90);
    expect(facedDays(ledger)).toEqual([7, 0, 7, 0, 0, 0, 0, 0]);
    // 7 straight on, 7 × 0.71 from each side between, 7 × 0.71 beyond.
    expect(lightDays(ledger)).toEqual([7, 9.9, 7, 4.95, 0, 0, 0, 4.95]);
    expect(ledger).toMatchObject({ nowFacesDeg: 90, daysSinceTurn: 7, gapAzimuthDeg: 225 });
    expect(ledger.why).toBe(
      'Since 1 March 2026 the side at half past 10 has had the least light. How it stood before that is not known.',
    );
  });

  it('finds the far side dark after one turn only', () => {
    const ledger = weeks(45);
    expect(ledger).toMatchObject({ gapAzimuthDeg: 225, evenness: 0 });
  });

  it('finds four quarter turns even, from whichever side they begin', () => {
    for (const from of [0, 30, 45, 300]) {
      const ledger = weeks(from, from + 90, from + 180, from + 270);
      expect(ledger.evenness).toBeGreaterThan(0.98);
      expect(ledger.gapAzimuthDeg).toBeNull();
    }
  });

  it('finds the flanks dark after half turns', () => {
    const ledger = weeks(0, 180, 0, 180);
    expect([90, 270]).toContain(ledger.gapAzimuthDeg);
    expect(ledger.evenness).toBeCloseTo(0.586, 3);
  });

  it('holds the last of several turns on one day, in the order recorded', () => {
    const turns = [
      { day: START, facesLightDeg: 0 },
      { day: START, facesLightDeg: 180 },
    ];
    expect(facedDays(lightLedger(turns, addDays(START, 5)))).toEqual([0, 0, 0, 0, 5, 0, 0, 0]);
  });

  it('takes turns recorded out of order by their days, and leaves out those still to come', () => {
    const turns = [
      { day: addDays(START, 7), facesLightDeg: 90 },
      { day: START, facesLightDeg: 0 },
      { day: addDays(START, 30), facesLightDeg: 270 },
    ];
    const ledger = lightLedger(turns, addDays(START, 10));
    expect(facedDays(ledger)).toEqual([7, 0, 3, 0, 0, 0, 0, 0]);
    expect(ledger.nowFacesDeg).toBe(90);
  });

  it('has no whole day yet on the day of the first turn', () => {
    const ledger = lightLedger([{ day: START, facesLightDeg: 0 }], START);
    expect(ledger).toMatchObject({ daysSinceTurn: 0, evenness: null, gapAzimuthDeg: null });
    expect(ledger.why).toContain('no whole day yet');
  });

  it('forgets what is longer ago than the last two rounds', () => {
    const turns = [
      { day: START, facesLightDeg: 0 },
      { day: addDays(START, 100), facesLightDeg: 90 },
    ];
    const today = addDays(START, 110);
    const ledger = lightLedger(turns, today);
    expect(facedDays(ledger)).toEqual([LEDGER_DAYS - 10, 0, 10, 0, 0, 0, 0, 0]);
    expect(ledger.fromDay).toBe(addDays(today, -LEDGER_DAYS));
    expect(ledger.why).not.toContain('not known');
  });

  it('counts by date across a change of the clocks and a leap day', () => {
    const from = day('2028-02-27');
    expect(lightLedger([{ day: from, facesLightDeg: 0 }], day('2028-04-01')).sides[0]?.daysFaced).toBe(34);
  });

  it('adds up to the days on record, turns with the plant, and never knows NaN', () => {
    const turns = fc.array(fc.record({ after: fc.integer({ min: 0, max: 60 }), eighth: fc.nat(7) }), {
      minLength: 1,
      maxLength: 12,
    });
    fc.assert(
      fc.property(turns, fc.nat(7), (list, by) => {
        const events = (shift: number): TurnEvent[] =>
          list.map(({ after, eighth }) => ({
            day: addDays(START, after) as Day,
            facesLightDeg: 45 * (eighth + shift),
          }));
        const today = addDays(START, 61);
        const ledger = lightLedger(events(0), today, null);
        const days = 61 - Math.min(...list.map(({ after }) => after));
        expect(facedDays(ledger).reduce((sum, one) => sum + one, 0)).toBe(days);
        const turned = lightLedger(events(by), today, null);
        ledger.sides.forEach(({ lightDays }, k) => {
          expect(turned.sides[(k + by) % 8]?.lightDays).toBeCloseTo(lightDays, 9);
        });
        expect(ledger.evenness).toBeGreaterThanOrEqual(0);
        expect(ledger.evenness).toBeLessThanOrEqual(1);
      }),
    );
  });
});
