import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reweighted, robustSimilarity } from '../../../../core/stand/frame/robust-similarity.ts';
import {
  chained,
  IDENTITY,
  inverseOf,
  leastSquaresSimilarity,
  moved,
  similarityAbout,
  turnDegOf,
  zoomOf,
} from '../../../../core/stand/frame/similarity.ts';
import { seededChance } from '../../../../sample-images/render/geometry/seeded-random.ts';

const anyMove = fc
  .record({
    x: fc.double({ min: -200, max: 200, noNaN: true }),
    y: fc.double({ min: -200, max: 200, noNaN: true }),
    turnDeg: fc.double({ min: -30, max: 30, noNaN: true }),
    zoom: fc.double({ min: 0.7, max: 1.4, noNaN: true }),
  })
  .map(({ x, y, turnDeg, zoom }) => similarityAbout([800, 600], { shiftPx: [x, y], turnDeg, zoom }));

describe('a similarity', () => {
  it('turns clockwise on screen: a point on the right goes down', () => {
    const [x, y] = moved(similarityAbout([10, 10], { shiftPx: [0, 0], turnDeg: 90, zoom: 2 }), [11, 10]);
    expect(x).toBeCloseTo(10, 12);
    expect(y).toBeCloseTo(12, 12);
  });

  it('and its inverse undo one another', () => {
    fc.assert(
      fc.property(anyMove, (move) => {
        const both = chained(move, inverseOf(move));
        expect(both.a).toBeCloseTo(IDENTITY.a, 9);
        expect(both.b).toBeCloseTo(IDENTITY.b, 9);
        expect(both.shiftX).toBeCloseTo(0, 6);
        expect(both.shiftY).toBeCloseTo(0, 6);
      }),
    );
  });

  it('is found again from three places by least squares', () => {
    fc.assert(
      fc.property(anyMove, (move) => {
        const places = [
          [0, 0],
          [1600, 100],
          [300, 1200],
        ] as const;
        const found = leastSquaresSimilarity(
          places.map((from) => ({ from, to: moved(move, from), weight: 1 })),
        );
        expect(found?.a).toBeCloseTo(move.a, 9);
        expect(found?.b).toBeCloseTo(move.b, 9);
        expect(found?.shiftX).toBeCloseTo(move.shiftX, 6);
      }),
    );
  });

  it('is not known from one place', () => {
    expect(leastSquaresSimilarity([{ from: [1, 1], to: [2, 2], weight: 1 }])).toBeNull();
  });
});

describe('the move that most agree on', () => {
  const move = similarityAbout([800, 600], { shiftPx: [30, -20], turnDeg: 2, zoom: 0.97 });
  const chance = seededChance(5);
  const place = (k: number) => [chance.between(0, 1600, k, 1), chance.between(0, 1200, k, 2)] as const;
  const right = Array.from({ length: 40 }, (_, k) => {
    const [x, y] = moved(move, place(k));
    return { from: place(k), to: [x + 0.2 * chance.normal(k, 3), y + 0.2 * chance.normal(k, 4)] as const };
  });
  // A plant that grew: half as many again, all of them up and to the left.
  const grown = Array.from({ length: 60 }, (_, k) => ({
    from: place(100 + k),
    to: [
      place(100 + k)[0] - 15 + 8 * chance.normal(k, 5),
      place(100 + k)[1] - 40 + 8 * chance.normal(k, 6),
    ] as const,
  }));

  it('is found though most pairs lie on a plant that grew', () => {
    const mixed = grown.flatMap((pair, k) => (right[k] === undefined ? [pair] : [pair, right[k]]));
    const fit = robustSimilarity(mixed, 2);
    expect(turnDegOf(fit?.move ?? IDENTITY)).toBeCloseTo(2, 1);
    expect(zoomOf(fit?.move ?? IDENTITY)).toBeCloseTo(0.97, 3);
    expect(fit?.spreadPx).toBeLessThan(0.4);
  });

  it('is none when nothing agrees', () => {
    const strewn = Array.from({ length: 30 }, (_, k) => ({ from: place(k), to: place(500 + k) }));
    expect(robustSimilarity(strewn, 2)).toBeNull();
  });

  it('does not creep after the plant when it starts right', () => {
    const fit = reweighted([...right, ...grown], move, 2);
    expect(fit?.move.shiftX).toBeCloseTo(move.shiftX, -0.3);
    expect(fit?.agreed.length).toBeGreaterThan(30);
  });
});
