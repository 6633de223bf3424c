import { describe, expect, it } from 'vitest';
import { strokesFormSchema } from '../../../server/schemas/stroke.ts';
import {
  drawnOn,
  FIRST_WIDTH_STEP,
  finishedStrokes,
  heldStep,
  WIDTH_STEPS,
  widthOfStep,
} from '../../../web/src/mend/brush.ts';
import { readKey } from '../../../web/src/mend/mend-keys.ts';
import { chanceWords, isDoubtful, sureWords, unsureWords } from '../../../web/src/photo/outline-words.ts';

const press = (
  key: string,
  held: Partial<Record<'ctrlKey' | 'metaKey' | 'altKey' | 'shiftKey', true>> = {},
) => ({
  key,
  ctrlKey: false,
  metaKey: false,
  altKey: false,
  shiftKey: false,
  ...held,
});

describe('the keys of the mending tool', () => {
  it('move the crosshair and paint only when the photo has the focus', () => {
    expect(readKey(press('ArrowLeft'), true)).toEqual({ what: 'step', by: [-1, 0], far: false });
    expect(readKey(press('ArrowDown', { shiftKey: true }), true)).toEqual({
      what: 'step',
      by: [0, 1],
      far: true,
    });
    expect(readKey(press(' '), true)).toEqual({ what: 'press' });
    expect(readKey(press('ArrowLeft'), false)).toBeNull();
    expect(readKey(press('Enter'), false)).toBeNull();
  });

  it('undo and redo as everywhere', () => {
    expect(readKey(press('z', { ctrlKey: true }), false)).toEqual({ what: 'undo' });
    expect(readKey(press('Z', { ctrlKey: true, shiftKey: true }), false)).toEqual({ what: 'redo' });
    expect(readKey(press('y', { ctrlKey: true }), false)).toEqual({ what: 'redo' });
    expect(readKey(press('z', { metaKey: true }), true)).toEqual({ what: 'undo' });
  });

  it('leave the browser’s own keys alone', () => {
    expect(readKey(press('r', { ctrlKey: true }), true)).toBeNull();
    expect(readKey(press('ArrowLeft', { altKey: true }), true)).toBeNull();
  });

  it('choose keep and remove, and answer for a zone', () => {
    const what = ['k', 'R', 'n', 'i', 'o', '+', '-'].map((key) => readKey(press(key), false)?.what);
    expect(what).toEqual(['keep', 'remove', 'next-zone', 'zone-in', 'zone-out', 'wider', 'narrower']);
  });
});

describe('the brush', () => {
  it('starts at 2.5 % of the longer side and stays between its ends', () => {
    expect(widthOfStep(FIRST_WIDTH_STEP, 1600)).toBeCloseTo(40, 10);
    expect(heldStep(-3)).toBe(0);
    expect(heldStep(99)).toBe(WIDTH_STEPS - 1);
  });

  it('takes up no points that would not show', () => {
    const points = drawnOn([[0, 0]], [4, 0], 40);
    expect(points).toEqual([[0, 0]]);
    expect(drawnOn(points, [6, 0], 40)).toHaveLength(2);
  });

  it('gives its stroke to a tenth of a px', () => {
    expect(finishedStrokes('keep', 39.0625, [[1.26, 700.04]])).toEqual([
      { kind: 'keep', widthPx: 39.1, pointsPx: [[1.3, 700]] },
    ]);
  });

  it('parts a line that is too long for one stroke and leaves no gap', () => {
    const line = Array.from({ length: 4500 }, (_, x): [number, number] => [x, 0]);
    const strokes = finishedStrokes('remove', 10, line);
    expect(strokes.map(({ pointsPx }) => pointsPx.length)).toEqual([2000, 2000, 502]);
    expect(strokes.every((stroke) => strokesFormSchema.safeParse({ strokes: [stroke] }).success)).toBe(true);
    for (const [index, { pointsPx }] of strokes.slice(1).entries()) {
      expect(pointsPx[0]).toEqual(strokes[index]?.pointsPx.at(-1));
    }
  });
});

describe('how sure the outline is', () => {
  it('never says 100 %', () => {
    expect(sureWords(0.962)).toBe('about 96 % sure');
    expect(sureWords(0.999)).toBe('about 99 % sure');
  });

  it('is doubtful below nine tenths, and never when unknown', () => {
    expect([isDoubtful(0.89), isDoubtful(0.9), isDoubtful(null)]).toEqual([true, false, false]);
  });

  it('says of a zone what it may be, its chance, and how it is counted', () => {
    const zone = { outlinePx: [], areaPx: 100, chance: 0.61, inCanopy: true };
    expect(unsureWords(zone)).toBe(
      'May be leaf, may not: about 60 % leaf. It is counted as canopy; the plus-minus includes it.',
    );
    expect(unsureWords({ ...zone, chance: 0.32, inCanopy: false })).toBe(
      'May be leaf, may not: about 30 % leaf. It is not counted as canopy; the plus-minus includes it.',
    );
    expect([chanceWords(0.01), chanceWords(0.99)]).toEqual(['about 5 %', 'about 95 %']);
  });
});
