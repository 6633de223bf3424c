import { describe, expect, it } from 'vitest';
import {
  isPlanned,
  listedCuts,
  markBefore,
  nextCut,
  progressOf,
  withMark,
} from '../../../web/src/cut-list/listed-cut.ts';
import { cutAt, listOf } from './listed.ts';

describe('a listed cut', () => {
  const list = listOf([
    cutAt('a', { state: 'done' }),
    cutAt('b', { chosen: false }),
    cutAt('c', { state: 'skipped' }),
    cutAt('d'),
    cutAt('e'),
  ]);

  it('goes by its place on the list', () => {
    expect(listedCuts(list).map(({ id, number }) => [id, number])).toEqual([
      ['a', 1],
      ['b', 2],
      ['c', 3],
      ['d', 4],
      ['e', 5],
    ]);
  });

  it('is planned when it is chosen and was not skipped', () => {
    expect(list.cuts.filter(isPlanned).map(({ id }) => id)).toEqual(['a', 'd', 'e']);
  });

  it('is the next one when it is the first that is planned and still open', () => {
    expect(nextCut(listedCuts(list))?.id).toBe('d');
    expect(nextCut(listedCuts(listOf([cutAt('a', { state: 'done' })])))).toBeNull();
  });

  it('is counted by what became of it', () => {
    expect(progressOf(listedCuts(list))).toEqual({ planned: 3, done: 1, skipped: 1, leftOut: 1, open: 2 });
  });

  it('shows a change before the server answers, and can be put back as it was', () => {
    const [, , , cut] = list.cuts;
    if (!cut) throw new TypeError('Expected a cut but received none');
    const change = { state: 'done', chosen: true } as const;
    const changed = withMark(list, 'd', change);
    expect(changed.cuts[3]).toMatchObject({ state: 'done', note: '' });
    expect(changed.cuts[4]).toBe(list.cuts[4]);
    expect(withMark(changed, 'd', markBefore(cut, change)).cuts[3]).toEqual(cut);
  });
});
