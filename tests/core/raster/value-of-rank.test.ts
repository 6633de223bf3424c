import fc from 'fast-check';
import { expect, it } from 'vitest';
import { valueOfRank } from '../../../core/raster/value-of-rank.ts';

it('gives what stands at the rank when the values are sorted', () => {
  fc.assert(
    fc.property(
      fc.float64Array({ noNaN: true, minLength: 1, maxLength: 2000 }),
      fc.nat(),
      (values, place) => {
        const rank = place % values.length;
        // Nought has two signs, which are one value.
        expect((valueOfRank(values.slice(), rank) as number) + 0).toBe(
          (values.slice().sort()[rank] as number) + 0,
        );
      },
    ),
  );
});

it('gives nothing for a rank that no value has', () => {
  expect(valueOfRank(new Float32Array(), 0)).toBeUndefined();
  expect(valueOfRank(Float32Array.of(1), 1)).toBeUndefined();
});
