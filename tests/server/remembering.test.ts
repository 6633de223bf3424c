import { describe, expect, it } from 'vitest';
import { remembering } from '../../server/bench/remembering.ts';

describe('a function that remembers', () => {
  it('answers the same question once, and the one longest unasked anew', () => {
    const asked: number[] = [];
    const twice = remembering(({ n }: { readonly n: number }) => {
      asked.push(n);
      return 2 * n;
    }, 2);
    const answers = [1, 2, 1, 3, 1, 2].map((n) => twice({ n }));
    expect(answers).toEqual([2, 4, 2, 6, 2, 4]);
    expect(asked).toEqual([1, 2, 3, 2]);
  });

  it('remembers that there is no answer', () => {
    let asked = 0;
    const nothing = remembering(() => {
      asked += 1;
      return null;
    }, 2);
    expect([nothing({}), nothing({}), asked]).toEqual([null, null, 1]);
  });
});
