import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import { bloomRecords, type PlantLog } from '../../../core/season/bloom-record.ts';
import type { LogEntry, LogKind } from '../../../core/season/log-entry.ts';

const entry = (kind: LogKind, on: string): LogEntry => ({
  id: `${kind} ${on}`,
  plantId: 'p',
  kind,
  day: day(on),
  text: '',
});

function records(changes: Partial<PlantLog>) {
  return bloomRecords({
    plantId: 'p',
    kind: 'regal',
    variety: 'Evening Bell',
    stops: [
      { day: day('2026-02-10'), depth: 'tip' },
      { day: day('2025-12-20'), depth: 'deep' },
    ],
    log: [entry('first-flower', '2026-05-28'), entry('full-bloom', '2026-06-12')],
    notes: [],
    ...changes,
  });
}

describe('a record of time to bloom', () => {
  it('runs from the last stop before the bloom', () => {
    expect(records({})).toEqual([
      {
        plantId: 'p',
        kind: 'regal',
        variety: 'Evening Bell',
        depth: 'tip',
        stopDay: '2026-02-10',
        firstFlowerDay: '2026-05-28',
        fullBloomDay: '2026-06-12',
        seasonNotes: [],
        leftOut: null,
      },
    ]);
  });

  it('is one a season, the first full bloom after the stop', () => {
    const found = records({
      stops: [
        { day: day('2025-02-10'), depth: 'tip' },
        { day: day('2026-02-10'), depth: 'tip' },
      ],
      log: [
        entry('full-bloom', '2025-06-20'),
        entry('full-bloom', '2025-08-20'),
        entry('full-bloom', '2026-06-12'),
      ],
    });
    expect(found.map(({ fullBloomDay }) => fullBloomDay)).toEqual(['2025-06-20', '2026-06-12']);
  });

  it.each([
    ['no day of full bloom', [entry('first-flower', '2026-05-28')], 'The day of full bloom is not noted.'],
    [
      'bloom taken off before',
      [entry('bloom-taken-off', '2026-05-10'), entry('full-bloom', '2026-06-12')],
      'Bloom was taken off on 10 May 2026, which put full bloom off.',
    ],
    [
      'a slip of the pen',
      [entry('full-bloom', '2026-02-12')],
      '2 days from the stop of 10 February 2026 to full bloom cannot be right: check both days.',
    ],
  ])('does not count with %s', (_, log, leftOut) => {
    expect(records({ log }).map((record) => record.leftOut)).toEqual([leftOut]);
  });

  it('is shown with the season’s note, and set aside only if the note says so', () => {
    const note = {
      id: 'n',
      plantId: null,
      fromDay: day('2025-11-01'),
      toDay: day('2026-02-28'),
      text: 'cold, dark winter',
      setsAside: false,
    };
    expect(records({ notes: [note] })[0]).toMatchObject({
      seasonNotes: ['cold, dark winter'],
      leftOut: null,
    });
    expect(records({ notes: [{ ...note, setsAside: true }] })[0]?.leftOut).toBe(
      'Set aside by your note: cold, dark winter',
    );
    const another = { ...note, setsAside: true, plantId: 'other' };
    const before = { ...note, setsAside: true, toDay: day('2026-02-09') };
    expect(records({ notes: [another, before] })[0]?.leftOut).toBeNull();
  });
});
