import { describe, expect, it } from 'vitest';
import { scoreChanges } from '../../../web/src/cut-list/score-changes.ts';
import { listOf } from './listed.ts';

describe('the scores before and after', () => {
  it('stand alone while the after is not known', () => {
    const [roundness] = scoreChanges(listOf([]));
    expect(roundness).toMatchObject({ before: { figure: '70', plusMinus: '±2' }, after: null, sense: null });
  });

  it('call a change inside both plus-minus no change', () => {
    const list = listOf([], {
      after: {
        roundness: { score: 84, plusMinus: 3 },
        symmetry: { score: 89, plusMinus: 2 },
        lopsidedness: { percent: 4.2, plusMinus: 1.6, side: 'right' },
      },
    });
    expect(scoreChanges(list).map(({ measure, sense }) => [measure, sense])).toEqual([
      ['roundness', 'better'],
      ['symmetry', 'no change'],
      ['lopsidedness', 'better'],
    ]);
    expect(scoreChanges(list)[2]).toMatchObject({
      before: { figure: '12', unit: '%', aside: 'to the left' },
      after: { figure: '4.2', unit: '%', aside: 'to the right' },
    });
  });

  it('of a plant seen from all round take its lean, with the hour it hangs to', () => {
    const lean = { plusMinus: 1, plusMinusDeg: 20, residuals: [], disagreement: 0 };
    const list = listOf([], {
      from: 'turned',
      lean: {
        before: { ...lean, percent: 9.5, azimuthDeg: 90, even: false },
        after: { ...lean, percent: 1.1, azimuthDeg: 90, even: true },
      },
    });
    expect(scoreChanges(list)[2]).toMatchObject({
      before: { figure: '9.5', aside: 'to 3 o’clock' },
      after: { figure: '1.1', aside: 'even' },
      sense: 'better',
    });
  });
});
