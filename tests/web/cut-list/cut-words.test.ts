import { describe, expect, it } from 'vitest';
import {
  countedWords,
  cutTold,
  heightWords,
  progressWords,
  takeOffWords,
} from '../../../web/src/cut-list/cut-words.ts';
import { listedCuts } from '../../../web/src/cut-list/listed-cut.ts';
import { inOrder } from '../../../web/src/cut-list/working-order.ts';
import { cutAt, listOf } from './listed.ts';

const one = (change: Parameters<typeof cutAt>[1]) => {
  const [cut] = listedCuts(listOf([cutAt('a', change)]));
  if (!cut) throw new TypeError('Expected a cut but received none');
  return cut;
};

describe('the words of a cut', () => {
  it('say which, where, how much and what kind of stop', () => {
    expect(cutTold(one({}))).toBe(
      'Cut 1: a long stem at 3 o’clock, 120 mm above the rim. 22 mm off, a tip stop.',
    );
    expect(cutTold(one({ clockFromAbove: 11, clockInPhoto: null, heightMm: null, kind: 'shoulder' }))).toBe(
      'Cut 1: a broad shoulder at 11 o’clock. 22 mm off, a tip stop.',
    );
  });

  it('give a share of the radius where there are no millimetres', () => {
    expect(takeOffWords(one({ takeOffMm: null }))).toBe('15 %');
  });

  it('tell below from above the rim', () => {
    expect(heightWords(one({ heightMm: -14.8 }))).toBe('15 mm below the rim');
    expect(heightWords(one({ heightMm: 0.2 }))).toBe('level with the rim');
    expect(heightWords(one({ heightMm: null }))).toBeNull();
  });

  it('count the list and how far the work has come', () => {
    const cuts = listedCuts(
      listOf([cutAt('a', { stop: 'deep', state: 'done' }), cutAt('b', { state: 'skipped' }), cutAt('c')]),
    );
    expect(countedWords(cuts)).toBe('3 cuts: 2 tip stops, 1 deep stop');
    expect(progressWords(cuts)).toBe('1 of 2 done, 1 skipped.');
  });

  it('keep their numbers in two passes, the tips first', () => {
    const cuts = listedCuts(listOf([cutAt('a', { stop: 'deep' }), cutAt('b'), cutAt('c')]));
    expect(inOrder(cuts, 'two-passes').map(({ number }) => number)).toEqual([2, 3, 1]);
    expect(inOrder(cuts, 'once-round').map(({ number }) => number)).toEqual([1, 2, 3]);
  });
});
