import { describe, expect, it } from 'vitest';
import type { FrameFit } from '../../../../core/stand/frame/frame-fit.ts';
import { frameInWords } from '../../../../core/stand/frame/frame-words.ts';
import { STANDING_LIMITS, standingOf } from '../../../../core/stand/frame/limits.ts';

const PLACE = { longerSidePx: 1600, mmPerPx: 0.5, cameraDistanceMm: 1200 };
const still: FrameFit = {
  from: 'marks',
  toStand: [1, 0, 0, 0, 1, 0, 0, 0, 1],
  shiftPx: [0, 0],
  turnDeg: 0,
  zoom: 1,
  residualPx: 0.1,
  doubt: { shiftPx: 0.1, turnDeg: 0.01, zoomShare: 0.0002 },
  standing: 'moved',
};
const words = (fit: Partial<FrameFit>, place = PLACE as Parameters<typeof frameInWords>[1]) =>
  frameInWords({ ...still, ...fit }, place);

describe('where the camera stands, in words', () => {
  it.each([
    [{ standing: 'same' }, 'The camera stands where it stood on the first day.'],
    [{ shiftPx: [40, 0] }, 'The camera stands about 2 cm further left than on the first day.'],
    [{ shiftPx: [-12, 0] }, 'The camera stands about 6 mm further right than on the first day.'],
    [{ shiftPx: [0, 30] }, 'The camera stands about 2 cm higher than on the first day.'],
    [{ shiftPx: [0, -30] }, 'The camera stands about 2 cm lower than on the first day.'],
    [{ zoom: 1.05 }, 'The camera stands about 6 cm nearer than on the first day.'],
    [{ zoom: 0.95 }, 'The camera stands about 6 cm further away than on the first day.'],
    [{ turnDeg: 2.1 }, 'The camera is tipped by about 2° to the left against the first day.'],
    [{ turnDeg: -0.8 }, 'The camera is tipped by about 0.8° to the right against the first day.'],
    [
      { shiftPx: [40, 20], zoom: 1.05, turnDeg: -3 },
      'The camera stands about 2 cm further left, about 1 cm higher and about 6 cm nearer than on the first day and is tipped by about 3° to the right.',
    ],
  ] as [Partial<FrameFit>, string][])('%j', (fit, sentence) => {
    expect(words(fit)).toBe(sentence);
  });

  it('are shares where neither scale nor distance is known', () => {
    const unknown = { longerSidePx: 1600, mmPerPx: null, cameraDistanceMm: null };
    expect(words({ shiftPx: [40, 0], zoom: 1.05 }, unknown)).toBe(
      'The camera stands about 3 % of the picture further left and about 5 % nearer than on the first day.',
    );
  });
});

describe('how far the camera stands', () => {
  const still = { shiftShare: 0, turnDeg: 0, zoom: 1 };

  it('is decided by the worst of shift, turn and zoom', () => {
    expect(standingOf(still)).toBe('same');
    expect(standingOf({ ...still, turnDeg: -1 })).toBe('moved');
    expect(standingOf({ ...still, zoom: 1 / 1.05, turnDeg: 0.1 })).toBe('moved');
    expect(standingOf({ ...still, shiftShare: 0.06 })).toBe('far');
    expect(standingOf({ ...still, turnDeg: -6 })).toBe('far');
    expect(standingOf({ ...still, zoom: 1 / 1.1 })).toBe('far');
  });

  it('is moved, not far, for all that is put right: 40 px of 1600, 3° and 5 %', () => {
    expect(standingOf({ shiftShare: 40 / 1600, turnDeg: 3, zoom: 1.05 })).toBe('moved');
    expect(STANDING_LIMITS.moved.shiftShare).toBeGreaterThan(40 / 1600);
  });

  it('is far when it is not a number', () => {
    expect(standingOf({ ...still, zoom: Number.NaN })).toBe('far');
  });
});
