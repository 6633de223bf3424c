import { describe, expect, it } from 'vitest';
import { COLLAR_CODE, COLLAR_STEPS } from '../../../../core/turned/collar/collar-code.ts';
import { collarDrawing, collarSvg } from '../../../../core/turned/collar/collar-drawing.ts';
import { COLLAR_RIMS, collarGeometry, isUpperDark } from '../../../../core/turned/collar/collar-geometry.ts';

/** How many of `length` steps differ between two places round the pot. */
function difference(from: number, other: number, length: number): number {
  let differ = 0;
  for (let k = 0; k < length; k++) {
    if (COLLAR_CODE[(from + k) % COLLAR_STEPS] !== COLLAR_CODE[(other + k) % COLLAR_STEPS]) differ++;
  }
  return differ;
}

function leastDifference(length: number): number {
  let least = length;
  for (let from = 0; from < COLLAR_STEPS; from++) {
    for (let other = 0; other < from; other++) least = Math.min(least, difference(from, other, length));
  }
  return least;
}

describe('the collar’s code', () => {
  // Golomb (1967), Shift Register Sequences: the three postulates of a maximal-length sequence of period 2⁶ − 1.
  it('is balanced: one more yes than no', () => {
    expect(COLLAR_CODE).toHaveLength(63);
    expect(COLLAR_CODE.filter((step) => step === 1)).toHaveLength(32);
  });

  it('has runs of each length as such a sequence must', () => {
    const runs: number[] = [];
    const start = COLLAR_CODE.findIndex((step, k) => step !== COLLAR_CODE.at(k - 1));
    for (let k = 0; k < COLLAR_STEPS; k++) {
      const at = (start + k) % COLLAR_STEPS;
      if (COLLAR_CODE[at] !== COLLAR_CODE.at(at - 1)) runs.push(0);
      runs[runs.length - 1] = (runs.at(-1) as number) + 1;
    }
    const count = (length: number) => runs.filter((run) => run === length).length;
    expect([1, 2, 3, 4, 5, 6].map(count)).toEqual([16, 8, 4, 2, 1, 1]);
  });

  it('is like itself at no other turn: 31 agree and 32 differ', () => {
    for (let turn = 1; turn < COLLAR_STEPS; turn++) expect(difference(0, turn, COLLAR_STEPS)).toBe(32);
  });

  it('shows any six steps once round the pot', () => {
    expect(leastDifference(6)).toBeGreaterThan(0);
  });

  it.each([
    [11, 3],
    [13, 4],
    [15, 5],
    [19, 7],
    [22, 8],
  ])('tells any %d steps from any others by at least %d', (length, least) => {
    expect(leastDifference(length)).toBe(least);
  });

  it('stands still in print: step by step from azimuth −180', () => {
    expect(COLLAR_CODE.join('')).toBe('010101001001111000001101110011000111010111111011010001000010110');
    expect(isUpperDark(-179)).toBe(false);
    expect(isUpperDark(179)).toBe(false);
    expect(isUpperDark(-172)).toBe(true);
    expect(isUpperDark(181)).toBe(isUpperDark(-179));
  });
});

describe('the collar’s strip', () => {
  it.each([
    [60, 1],
    [90, 2],
    [130, 2],
    [200, 3],
  ])('for a rim of %d mm comes in %d pieces on A4 that make it up without gap', (rimMm, count) => {
    const { pieces, lengthMm, pageMm } = collarGeometry(rimMm, 'A4');
    expect(pieces).toHaveLength(count);
    expect(lengthMm).toBeCloseTo(Math.PI * rimMm, 9);
    expect(pieces[0]?.fromDeg).toBe(-180);
    expect(pieces.at(-1)?.toDeg).toBe(180);
    pieces.slice(1).forEach(({ fromDeg }, k) => {
      expect(fromDeg).toBe(pieces[k]?.toDeg);
    });
    expect(pieces.reduce((sum, piece) => sum + piece.lengthMm, 0)).toBeCloseTo(lengthMm, 9);
    for (const piece of pieces) expect(piece.lengthMm + 14 + 16).toBeLessThanOrEqual(pageMm.widthMm);
  });

  it('is never joined within 10° of the mark', () => {
    for (let rimMm = COLLAR_RIMS.leastMm; rimMm <= COLLAR_RIMS.mostMm; rimMm++) {
      for (const paper of ['A4', 'Letter'] as const) {
        for (const { toDeg } of collarGeometry(rimMm, paper).pieces) {
          expect(Math.abs(toDeg)).toBeGreaterThan(10);
        }
      }
    }
  });

  it('fits on its page with all that is printed, for every rim', () => {
    for (let rimMm = COLLAR_RIMS.leastMm; rimMm <= COLLAR_RIMS.mostMm; rimMm += 5) {
      for (const paper of ['A4', 'Letter'] as const) {
        const { shapes, widthMm, heightMm } = collarDrawing(rimMm, paper);
        const points = shapes.flatMap((shape) => ('pointsMm' in shape ? shape.pointsMm : []));
        const check = heightMm - 9;
        for (const [x, y] of points) {
          expect(x).toBeGreaterThanOrEqual(7.9);
          expect(x).toBeLessThanOrEqual(widthMm - 7.9);
          expect(y).toBeLessThanOrEqual(check + 0.001);
        }
        // The strip's pieces end above the ticks of the line to check by.
        const bars = shapes.flatMap((shape) => (shape.kind === 'rect' ? [shape.topMm + shape.heightMm] : []));
        expect(Math.max(...bars)).toBeLessThan(check - 8);
      }
    }
  });

  it('shows one dark row in each step, so that bars of both rows together go once round', () => {
    const { shapes } = collarDrawing(130, 'A4');
    const bars = shapes.flatMap((shape) => (shape.kind === 'rect' ? [shape] : []));
    expect(bars.reduce((sum, bar) => sum + bar.widthMm, 0)).toBeCloseTo(Math.PI * 130, 6);
    expect(new Set(bars.map((bar) => bar.fill))).toEqual(new Set([0]));
  });

  it('carries the mark, the hours and a line of 100 mm', () => {
    const { shapes } = collarDrawing(130, 'A4');
    const words = shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.words] : []));
    expect(words).toEqual(expect.arrayContaining(['mark (6 o’clock)', '3', '9', '12', '100 mm']));
    const svg = collarSvg(130, 'A4');
    expect(svg).toContain('<svg xmlns="http://www.w3.org/2000/svg" width="297mm" height="210mm"');
    expect(svg).not.toContain('NaN');
  });

  it('puts the mark’s point where the strip’s azimuth is 0', () => {
    const { shapes } = collarDrawing(130, 'A4');
    const mark = shapes.find((shape) => shape.kind === 'text' && shape.words.startsWith('mark'));
    const tips = shapes.flatMap((shape) => (shape.kind === 'polygon' ? [shape.pointsMm[1]] : []));
    const [second] = collarGeometry(130, 'A4').pieces.slice(1);
    const x = 8 + ((0 - (second?.fromDeg ?? 0)) / 360) * Math.PI * 130;
    expect(tips.some((tip) => tip !== undefined && Math.abs(tip[0] - x) < 1e-9)).toBe(true);
    expect(mark?.kind === 'text' && mark.atMm[0]).toBeCloseTo(x + 1.6, 9);
  });

  it('is not made for rims outside its range', () => {
    expect(() => collarGeometry(20, 'A4')).toThrow('Expected 60 to 200 for rimMm but received 20');
    expect(() => collarGeometry(Number.NaN, 'A4')).toThrow('received NaN');
  });
});
