import { describe, expect, it } from 'vitest';
import { signedDistance } from '../../../core/turned/signed-distance.ts';

function drawn(lines: readonly string[]) {
  const width = (lines[0] as string).length;
  return {
    width,
    height: lines.length,
    data: Uint8Array.from([...lines.join('')].map((one) => (one === '#' ? 1 : 0))),
  };
}

describe('depth inside a mask', () => {
  it('runs through 0 half-way between an inside and an outside cell', () => {
    expect([...signedDistance(drawn(['..##']))]).toEqual([-1.5, -0.5, 0.5, 1.5]);
  });

  it('goes round corners', () => {
    const depths = signedDistance(drawn(['....', '....', '..##', '..##']));
    expect(depths[0]).toBeCloseTo(0.5 - Math.hypot(2, 2), 6);
    expect(depths[5]).toBeCloseTo(0.5 - Math.SQRT2, 6);
  });

  it('is the distance to the nearest cell of the other kind, tried against all of them', () => {
    const mask = drawn(['.......', '.##..#.', '.###.#.', '..##...', '......#', '.#.....']);
    const depths = signedDistance(mask);
    for (let at = 0; at < mask.data.length; at++) {
      const inside = mask.data[at] === 1;
      let nearest = Number.POSITIVE_INFINITY;
      mask.data.forEach((value, other) => {
        if ((value === 1) === inside) return;
        const [dx, dy] = [(other % 7) - (at % 7), Math.floor(other / 7) - Math.floor(at / 7)];
        nearest = Math.min(nearest, Math.hypot(dx, dy));
      });
      expect(depths[at]).toBeCloseTo(inside ? nearest - 0.5 : 0.5 - nearest, 5);
    }
  });
});
