import { describe, expect, it } from 'vitest';
import type { SittingReports } from '../../../core/advice/plant-history.ts';
import { day } from '../../../core/day/day.ts';
import { growthStretches, type RadiusReading, radiusReadings } from '../../../core/growth/radius-readings.ts';
import type { Ball, PhotoReport } from '../../../core/report.ts';

const reading = (on: string, radiusMm: number, plusMinusMm: number | null = 3): RadiusReading => ({
  day: day(on),
  radiusMm,
  plusMinusMm,
});

describe('stretches between stops', () => {
  it('count weeks from the stop, by date', () => {
    const [stretch] = growthStretches(
      [reading('2026-04-06', 90), reading('2026-03-30', 80)],
      [day('2026-03-23')],
    );
    expect(stretch?.begunBy).toBe('stop');
    expect(stretch?.readings.map(({ weeks }) => weeks)).toEqual([1, 2]);
    expect(stretch?.readings.map(({ radiusMm }) => radiusMm)).toEqual([80, 90]);
  });

  it('begin with the first sitting where no stop is known', () => {
    const [stretch] = growthStretches([reading('2026-03-30', 80), reading('2026-04-06', 90)], []);
    expect(stretch).toMatchObject({ begunBy: 'first-sitting', since: '2026-03-30' });
    expect(stretch?.readings[0]?.weeks).toBe(0);
  });

  it('count the photo of a stop’s day before the cut', () => {
    const stretches = growthStretches(
      [reading('2026-03-01', 100), reading('2026-03-08', 110), reading('2026-03-15', 70)],
      [day('2026-03-08')],
    );
    expect(stretches.map(({ readings }) => readings.map(({ radiusMm }) => radiusMm))).toEqual([
      [100, 110],
      [70],
    ]);
  });

  it('leave out a stop without a sitting after it', () => {
    const stretches = growthStretches(
      [reading('2026-03-01', 100), reading('2026-03-15', 70)],
      [day('2026-03-08'), day('2026-03-10'), day('2026-04-01')],
    );
    expect(stretches.map(({ since }) => since)).toEqual(['2026-03-01', '2026-03-10']);
  });

  it('take the mean of a day, no surer than its least sure reading', () => {
    const [stretch] = growthStretches([reading('2026-03-30', 80, 2), reading('2026-03-30', 84, 5)], []);
    expect(stretch?.readings).toEqual([{ weeks: 0, radiusMm: 82, sdMm: 5 / 1.96 }]);
  });

  it('take a share of the mean radius where no plus-minus is known, the same for all', () => {
    const [stretch] = growthStretches(
      [reading('2026-03-30', 60, null), reading('2026-04-06', 100, null)],
      [],
    );
    expect(stretch?.readings.map(({ sdMm }) => sdMm)).toEqual([1.2, 1.2]);
  });

  it('refuse a radius that is none', () => {
    expect(() => growthStretches([reading('2026-03-30', Number.NaN)], [])).toThrow(
      'Expected a positive number for radiusMm but received NaN',
    );
  });
});

describe('readings of sittings', () => {
  const report = (radiusMm: number | null): PhotoReport =>
    ({ ball: { radiusMm, radiusPlusMinusMm: radiusMm === null ? null : 2 } as Ball }) as PhotoReport;
  const sitting = (on: string, ...reports: PhotoReport[]): SittingReports => ({ day: day(on), reports });

  it('are the mean of the views that have a scale', () => {
    const found = radiusReadings([sitting('2026-03-01', report(100), report(null), report(110))]);
    expect(found).toEqual([{ day: '2026-03-01', radiusMm: 105, plusMinusMm: 2 }]);
  });

  it('leave out a sitting that tells nothing in mm', () => {
    const found = radiusReadings([
      sitting('2026-03-01', report(null)),
      sitting('2026-03-08', { ball: null } as PhotoReport),
      sitting('2026-03-15'),
    ]);
    expect(found).toEqual([]);
  });
});
