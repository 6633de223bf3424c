import { describe, expect, it } from 'vitest';
import { freePlace } from '../../web/src/photo/free-place.ts';

const SIZE = { width: 80, height: 26 };
const plate = (x: number, y: number) => ({ at: [x, y] as const, size: SIZE });

describe('a label beside others', () => {
  it('stays where nothing is in its way', () => {
    expect(freePlace(plate(100, 100), [plate(100, 160), plate(190, 100)])).toEqual([100, 100]);
  });

  it('steps down, else up, by no more than it needs', () => {
    const [, below] = freePlace(plate(100, 100), [plate(130, 95)]);
    expect(below).toBeGreaterThan(121);
    expect(below).toBeLessThan(135);
    const [, above] = freePlace(plate(100, 100), [plate(100, 100), plate(100, 130)]);
    expect(above).toBeLessThan(74);
  });

  it('stays when every place near it is taken', () => {
    const all = Array.from({ length: 40 }, (_, k) => plate(100, -400 + 26 * k));
    expect(freePlace(plate(100, 100), all)).toEqual([100, 100]);
  });
});
