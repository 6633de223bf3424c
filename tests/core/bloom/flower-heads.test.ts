import { describe, expect, it } from 'vitest';
import { flowerHeads, flowerPatches, usualHeadSize } from '../../../core/bloom/flower-heads.ts';
import { flowerSharePlusMinus } from '../../../core/bloom/flower-share-doubt.ts';
import { PARTS, type PartMap } from '../../../core/canopy/found-plant.ts';

const SIDE = 300;
const [LEAF, FLOWER] = [PARTS.indexOf('leaf'), PARTS.indexOf('flower')];

/** A leafy disc with round heads on it, px. */
function plant(heads: readonly (readonly [x: number, y: number, radius: number])[]): PartMap {
  const data = Uint8Array.from({ length: SIDE * SIDE }, (_, k) => {
    const [x, y] = [k % SIDE, Math.floor(k / SIDE)];
    if (heads.some(([hx, hy, radius]) => Math.hypot(x - hx, y - hy) < radius)) return FLOWER;
    return Math.hypot(x - 150, y - 150) < 140 ? LEAF : 0;
  });
  return { width: SIDE, height: SIDE, data };
}

describe('flower heads', () => {
  const three = plant([
    [80, 100, 30],
    [180, 90, 30],
    [150, 200, 30],
  ]);

  it('are counted by patches where they stand apart', () => {
    const { least, most } = flowerHeads(flowerPatches(three), usualHeadSize('regal'));
    expect(least).toBe(3);
    expect(most).toBeLessThanOrEqual(9);
  });

  it('are at least as many as large heads cover where they run together', () => {
    const sheet = plant([[150, 150, 90]]);
    const { least, most } = flowerHeads(flowerPatches(sheet), [45, 85]);
    // A sheet of 180 mm across is 4.5 heads of 85 mm or 27 of 45 mm of which three fifths show.
    expect(least).toBe(4);
    expect(most).toBe(27);
  });

  it('are told apart by patches, largest first', () => {
    const patches = flowerPatches(
      plant([
        [80, 100, 20],
        [180, 90, 30],
      ]),
    );
    expect(patches).toHaveLength(2);
    expect(patches[0] as number).toBeCloseTo(Math.PI * 900, -2);
    expect(patches[1] as number).toBeCloseTo(Math.PI * 400, -2);
  });

  it('may be none where only a speck shows, and are none on a green plant', () => {
    expect(flowerHeads(flowerPatches(plant([[150, 150, 6]])), [45, 85])).toMatchObject({ least: 0 });
    expect(flowerHeads(flowerPatches(plant([])), [45, 85])).toEqual({ least: 0, most: 0 });
    expect(() => flowerHeads([100], [0, 85])).toThrow('Expected a positive number for size');
  });
});

describe('the flower share’s plus-minus', () => {
  it('grows with the share and with the edges between petal and leaf', () => {
    const none = flowerSharePlusMinus(plant([]), 1) as number;
    const one = flowerSharePlusMinus(plant([[150, 150, 60]]), 1) as number;
    const ragged = plant([[150, 150, 60]]);
    const striped = {
      ...ragged,
      data: ragged.data.map((part, k) => (part === FLOWER && k % 4 < 2 ? LEAF : part)),
    };
    expect(none).toBeCloseTo(0.008, 3);
    expect(one).toBeGreaterThan(none);
    expect(flowerSharePlusMinus(striped, 1) as number).toBeGreaterThan(one);
  });

  it('is not told without canopy', () => {
    expect(flowerSharePlusMinus({ width: 2, height: 1, data: new Uint8Array(2) }, 1)).toBeNull();
  });
});
