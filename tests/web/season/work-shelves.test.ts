import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import type { Piece } from '../../../web/src/api/work-words.ts';
import { workShelves } from '../../../web/src/season/work/work-shelves.ts';
import { whenWords } from '../../../web/src/season/work/work-when.ts';

const TODAY = day('2026-06-17');

function piece(kind: Piece['kind'], on: string, changes: Partial<Piece> = {}): Piece {
  return {
    key: `a:${kind}:${on}`,
    plantId: 'a',
    kind,
    day: day(on),
    dueBy: day(on),
    until: null,
    what: `Do the ${kind}.`,
    why: '',
    standing: '',
    caution: null,
    doneOn: null,
    state: 'to-come',
    movedFrom: null,
    stateInWords: null,
    ...changes,
  };
}

describe('a plant’s work', () => {
  const weekly = ['2026-06-20', '2026-06-27', '2026-07-04'].map((on) => piece('turn', on));
  const shelves = workShelves(
    [
      piece('look-over', '2026-06-15', { state: 'overdue' }),
      piece('keep-airy', '2026-06-01', { state: 'lapsed' }),
      ...weekly,
      piece('check-entry', '2026-07-20'),
      piece('feed', '2026-06-10', { state: 'done' }),
    ],
    TODAY,
  );

  it('is parted by when it is wanted; of what comes round only the next round stands', () => {
    const kinds = (pieces: readonly Piece[]) => pieces.map(({ kind, day: on }) => `${kind} ${on}`);
    expect(kinds(shelves.now)).toEqual(['look-over 2026-06-15']);
    expect(kinds(shelves.soon)).toEqual(['turn 2026-06-20']);
    expect(kinds(shelves.later)).toEqual(['check-entry 2026-07-20']);
  });

  it('does not nag: what has lapsed stands with what is done', () => {
    expect(shelves.settled.map(({ state }) => state)).toEqual(['done', 'lapsed']);
  });

  it('says until when it is of use', () => {
    const due = piece('keep-dry', '2026-06-15', { state: 'due', until: day('2026-06-17') });
    expect(whenWords(due, TODAY)).toMatch(/^since .*, today is the last day$/);
    expect(whenWords(piece('own', '2026-06-17', { state: 'due' }), TODAY)).toBe('from today');
    expect(whenWords(piece('own', '2026-06-20'), TODAY)).toMatch(/^in 3 days, /);
  });
});
