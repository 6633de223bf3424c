import { describe, expect, it } from 'vitest';
import { day } from '../../core/day/day.ts';
import type { Bench } from '../../server/schemas/pages.ts';
import { groupedRows, NO_SHOW, shownRows, WHOLE_BENCH } from '../../web/src/bench/order/bench-order.ts';
import { benchWork, plantsIn } from '../../web/src/bench/work/work-groups.ts';
import { namesInWords, waitWords } from '../../web/src/bench/work/work-words.ts';

type Row = Bench['plants'][number];
type Piece = Row['work'][number];

const piece = (facts: Partial<Record<keyof Piece, string | null>>): Piece =>
  ({
    key: 'a',
    plantId: 'a',
    kind: 'turn',
    day: '2026-06-01',
    dueBy: '2026-06-01',
    until: '2026-06-07',
    what: 'Turn the pot.',
    why: '',
    standing: '',
    caution: null,
    doneOn: null,
    state: 'due',
    movedFrom: null,
    stateInWords: null,
    ...facts,
  }) as Piece;
const row = (
  name: string,
  plant: Partial<Record<keyof Row['plant'], string>> = {},
  work: Piece[] = [],
): Row =>
  ({
    plant: { id: name, name, kind: 'regal', variety: '', showId: null, showDay: null, ...plant },
    newest: null,
    advice: [],
    work,
  }) as unknown as Row;

const LATE = [piece({ state: 'overdue' })];
const ROWS = [
  row('Tallow', { kind: 'angel', variety: 'Pale Ferry' }),
  row('Birch', { showId: 'late-show', showDay: '2026-09-01' }, LATE),
  row('Amber', { showId: 'early-show', showDay: '2026-07-01' }),
];
const SHOWS = new Map([
  ['early-show', 'Early'],
  ['late-show', 'Later'],
]);
const names = (rows: readonly Row[]) => rows.map(({ plant }) => plant.name);
const shape = (order: Parameters<typeof groupedRows>[1]) =>
  groupedRows(ROWS, order, SHOWS).map(({ words, rows }) => [words, ...names(rows)]);

describe('a bench', () => {
  it('lets through the plants that are sought by name, variety, kind, show and lateness', () => {
    const found = (change: object) => names(shownRows(ROWS, { ...WHOLE_BENCH, ...change }));
    expect(found({})).toEqual(['Tallow', 'Birch', 'Amber']);
    expect(found({ name: ' ferry' })).toEqual(['Tallow']);
    expect(found({ kind: 'regal' })).toEqual(['Birch', 'Amber']);
    expect(found({ showId: 'late-show' })).toEqual(['Birch']);
    expect(found({ showId: NO_SHOW })).toEqual(['Tallow']);
    expect(found({ lateOnly: true })).toEqual(['Birch']);
    expect(found({ lateOnly: true, kind: 'angel' })).toEqual([]);
  });

  it('stands by name, kind, show and what is late', () => {
    expect(shape('name')).toEqual([['By name', 'Amber', 'Birch', 'Tallow']]);
    expect(shape('kind')).toEqual([
      ['Regal pelargonium', 'Amber', 'Birch'],
      ['Angel pelargonium', 'Tallow'],
    ]);
    expect(shape('show')).toEqual([
      ['Early', 'Amber'],
      ['Later', 'Birch'],
      ['For no show', 'Tallow'],
    ]);
    expect(shape('late')).toEqual([
      ['Past its day', 'Birch'],
      ['In time', 'Amber', 'Tallow'],
    ]);
  });
});

describe('the work of a bench', () => {
  const work = benchWork([
    row('Tallow', {}, [piece({ plantId: 'Tallow' }), piece({ kind: 'stop', what: 'Stop it.' })]),
    row('Birch', {}, [
      piece({ plantId: 'Birch', state: 'overdue', day: '2026-05-30' }),
      piece({ state: 'lapsed', what: 'Too old.' }),
      piece({ state: 'to-come', what: 'Later.' }),
      piece({ state: 'skipped', what: 'Left.' }),
    ]),
  ]);

  it('has the same work on several plants in one place, stops first', () => {
    expect(work.today.map(({ what, pieces }) => [what, ...pieces.map((one) => one.plantName)])).toEqual([
      ['Stop it.', 'Tallow'],
      ['Turn the pot.', 'Birch', 'Tallow'],
    ]);
    expect(plantsIn(work.today.slice(1))).toBe(2);
    expect(work.thisWeek.map(({ what }) => what)).toEqual(['Later.']);
    expect(work.settled.map(({ what }) => what)).toEqual(['Left.']);
  });

  it('never lists what has lapsed', () => {
    expect(JSON.stringify(work)).not.toContain('Too old.');
  });

  it('says how long it waits, and on which plants', () => {
    const today = day('2026-06-01');
    const wait = (facts: Parameters<typeof piece>[0]) => waitWords({ ...piece(facts), plantName: '' }, today);
    expect(wait({ state: 'overdue', day: '2026-05-30' })).toContain('since');
    expect(wait({ dueBy: '2026-06-04' })).toContain('until');
    expect(wait({ until: '2026-06-01' })).toBe('today only');
    const named = ['A', 'B', 'C', 'D', 'E', 'F', 'G'].map((plantName) => ({ ...piece({}), plantName }));
    expect(namesInWords(named)).toBe('A, B, C and 4 more');
    expect(namesInWords(named.slice(0, 6))).toBe('A, B, C, D, E, F');
  });
});
