import { describe, expect, it } from 'vitest';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { comparePairs } from '../../../web/src/compare/pairs.ts';

/** Sittings newest first, one measured photo each, as far as pairs look at them. */
function page(days: readonly string[], stops: readonly string[]): Pick<PlantPage, 'sittings' | 'stops'> {
  const sittings = days.map((day) => ({
    day,
    views: [
      {
        id: day,
        turnDeg: 0,
        standId: null,
        afterWork: false,
        report: { status: 'measured', frame: null, notCompared: null },
      },
    ],
  }));
  return { sittings, stops: stops.map((day) => ({ day })) } as unknown as Pick<
    PlantPage,
    'sittings' | 'stops'
  >;
}

const named = (found: ReturnType<typeof comparePairs>) =>
  found.map(({ name, later, earlier }) => [name, later.sitting.day, earlier.sitting.day]);

describe('pairs that one tap chooses', () => {
  it('are since the last sitting, the last stop and the first photo', () => {
    expect(
      named(comparePairs(page(['2026-04-05', '2026-03-22', '2026-03-08', '2026-03-01'], ['2026-03-10']))),
    ).toEqual([
      ['Since the last sitting', '2026-04-05', '2026-03-22'],
      ['Since the last stop', '2026-04-05', '2026-03-08'],
      ['Since the first photo', '2026-04-05', '2026-03-01'],
    ]);
  });

  it('take the photo of the stop’s own day: it shows the plant before the knife', () => {
    expect(named(comparePairs(page(['2026-04-05', '2026-03-22'], ['2026-03-22'])))[1]).toEqual([
      'Since the last stop',
      '2026-04-05',
      '2026-03-22',
    ]);
  });

  it('leave out what has no photo before it', () => {
    expect(comparePairs(page(['2026-04-05'], ['2026-03-22']))).toEqual([]);
    expect(named(comparePairs(page(['2026-04-05', '2026-03-22'], ['2026-01-01'])))).not.toContainEqual(
      expect.arrayContaining(['Since the last stop']),
    );
  });
});
