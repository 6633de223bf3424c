import { afterAll, describe, expect, it } from 'vitest';
import { measureSilhouette } from '../../core/measures/measure-silhouette.ts';
import { readSilhouette } from '../../core/silhouette/silhouette.ts';
import { drawMask, foundPlant, potWithRim } from '../core/drawn-shapes.ts';
import { type BallInSpace, isBehindPot, outlineOf, PHOTO } from './known-balls/ball-in-space.ts';
import { type Predicted, predict } from './known-balls/predict.ts';
import { TWENTY_BALLS } from './known-balls/twenty-balls.ts';

/**
 * Balls in space with known dents and bulges: what the definitions say, worked out from the formula of each ball's outline,
 * beside what is read off its mask at photo size. Invented shapes; the truth is their formula.
 */

interface Row {
  readonly name: string;
  readonly said: Predicted;
  readonly read: Predicted;
}

function rowOf(ball: BallInSpace): Row {
  const outline = outlineOf(ball);
  const mask = drawMask(
    PHOTO.widthPx,
    PHOTO.heightPx,
    (x, y) => outline.inside(x, y) && !isBehindPot(outline, x, y),
  );
  const { axisXPx, rimYPx, rimHalfWidthPx } = outline;
  const pot = potWithRim([axisXPx - rimHalfWidthPx, rimYPx], [axisXPx + rimHalfWidthPx, rimYPx]);
  const silhouette = readSilhouette(mask);
  if (silhouette === null) throw new Error(`${ball.name} is not in the photo.`);
  const measures = measureSilhouette(silhouette, foundPlant(mask, pot));
  const read = {
    roundness: measures.roundness?.score ?? Number.NaN,
    symmetry: measures.symmetry ?? Number.NaN,
    lopsidedness: measures.lopsidedness ?? Number.NaN,
    radiusPx: measures.ball?.radiusPx ?? Number.NaN,
  };
  return { name: ball.name, said: predict(outline), read };
}

function tableOf(rows: readonly Row[]): string {
  const pair = (said: number, read: number) =>
    `${said.toFixed(2).padStart(7)} ${read.toFixed(2).padStart(7)}`;
  const lines = rows.map(({ name, said, read }) =>
    [
      name.padEnd(42),
      pair(said.roundness, read.roundness),
      pair(said.symmetry, read.symmetry),
      pair(said.lopsidedness, read.lopsidedness),
      pair(said.radiusPx, read.radiusPx),
    ].join('  '),
  );
  const head = `${''.padEnd(42)}  ${['roundness', 'symmetry', 'lopsidedness', 'radius px'].map((name) => name.padEnd(15)).join('  ')}`;
  return [head, `${''.padEnd(42)}  ${'predicted read   '.repeat(4)}`, ...lines].join('\n');
}

describe('twenty balls with known dents and bulges', () => {
  const rows = new Map<string, Row>();
  const named = (name: string): Row => {
    const known = rows.get(name) ?? rowOf(TWENTY_BALLS.find((ball) => ball.name === name) as BallInSpace);
    rows.set(name, known);
    return known;
  };

  afterAll(() => console.log(tableOf([...rows.values()])));

  it('are twenty', () => {
    expect(new Set(TWENTY_BALLS.map(({ name }) => name)).size).toBe(20);
  });

  it.each(TWENTY_BALLS)('$name reads within a point of what its formula says', ({ name }) => {
    const { said, read } = named(name);
    expect(Math.abs(read.roundness - said.roundness)).toBeLessThanOrEqual(1);
    expect(Math.abs(read.symmetry - said.symmetry)).toBeLessThanOrEqual(1);
    expect(Math.abs(read.lopsidedness - said.lopsidedness)).toBeLessThanOrEqual(1);
    // The prediction takes every fifth of its directions, which moves a median by a hair.
    expect(Math.abs(read.radiusPx / said.radiusPx - 1)).toBeLessThan(0.002);
  });

  it('lose roundness with every dent and bulge that shows, more the deeper it is', () => {
    const even = named('even ball').read.roundness;
    expect(named('dent of 5 % on top').read.roundness).toBeLessThan(even - 2);
    expect(named('dent of 12 % on top').read.roundness).toBeLessThan(
      named('dent of 5 % on top').read.roundness - 3,
    );
    expect(named('bulge of 15 % at the right').read.roundness).toBeLessThan(even - 5);
    expect(named('flattened to 0.85').read.roundness).toBeLessThan(even - 8);
  });

  it('keep all scores with a dent that faces the camera, which one photo cannot show', () => {
    const { read } = named('dent of 20 % towards the camera');
    const even = named('even ball').read;
    expect(Math.abs(read.roundness - even.roundness)).toBeLessThan(0.5);
    expect(Math.abs(read.symmetry - even.symmetry)).toBeLessThan(0.5);
  });

  it('lean to the side that is heavier', () => {
    expect(named('bulge of 15 % at the right').read.lopsidedness).toBeGreaterThan(1);
    expect(named('dent of 10 % at the right').read.lopsidedness).toBeLessThan(-0.5);
    expect(named('dent of 10 % at the left').read.lopsidedness).toBeGreaterThan(0.5);
    expect(named('leaning 8 % to the right').read.lopsidedness).toBeGreaterThan(5);
    expect(named('leaning 15 % to the left').read.lopsidedness).toBeLessThan(-10);
  });

  it('lose symmetry with what is on one side only', () => {
    expect(named('dent of 12 % on top').read.symmetry).toBeGreaterThan(99);
    expect(named('bulge right, dent left').read.symmetry).toBeLessThan(95);
    expect(named('leaning 8 % to the right').read.symmetry).toBeLessThan(95);
  });
});
