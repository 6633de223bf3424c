import { describe, expect, it } from 'vitest';
import type { Cut } from '../../../core/cut/cut.ts';
import {
  plannedAndDoneWords,
  type StillStanding,
  stillStanding,
} from '../../../core/cut/planned-and-done.ts';

const CUT: Cut = {
  id: '',
  azimuthDeg: null,
  clockFromAbove: null,
  clockInPhoto: null,
  heightMm: null,
  excessMm: null,
  plusMinusMm: null,
  takeOffMm: null,
  takeOffPercent: 20,
  stop: 'tip',
  kind: 'shoot',
  tipPx: null,
  cutPx: null,
  tipMm: null,
  cutMm: null,
  aboveShootPx: null,
  why: '',
  sure: 'likely',
};

/** A cut of a photo whose tip lies `deg` clockwise from the top, 130 px from the place given. */
function inPhoto(deg: number, takeOffMm = 40, [cx, cy] = [0, 0]): Cut {
  const angle = (deg * Math.PI) / 180;
  const tipPx = [cx + 130 * Math.sin(angle), cy - 130 * Math.cos(angle)] as const;
  return { ...CUT, id: `${deg}`, clockInPhoto: Math.round(deg / 30) || 12, tipPx, takeOffMm };
}

describe('planned and done', () => {
  const planned = { cuts: [inPhoto(270), inPhoto(0), inPhoto(90)], centre: [0, 0] };

  it('finds the stem that still stands, wherever the plant stands in the later photo', () => {
    const later = { cuts: [inPhoto(96, 22, [400, 300])], centre: [400, 300] };
    expect(stillStanding(planned, later)).toEqual([
      { cutId: '90', clock: 3, standsOutMm: 22, standsOutPercent: 20 },
    ]);
  });

  it('leaves nothing standing where all are gone, and counts no new stem elsewhere', () => {
    expect(stillStanding(planned, { cuts: [], centre: [0, 0] })).toEqual([]);
    expect(stillStanding(planned, { cuts: [inPhoto(135)], centre: [0, 0] })).toEqual([]);
  });

  it('takes one later stem for one planned stem only, the nearest', () => {
    const close = { cuts: [inPhoto(80), inPhoto(95)], centre: [0, 0] };
    expect(stillStanding(close, { cuts: [inPhoto(91)], centre: [0, 0] }).map(({ cutId }) => cutId)).toEqual([
      '95',
    ]);
  });

  it('compares in the round as well, by direction from the ball’s middle', () => {
    const tip = (tipMm: [number, number, number]): Cut => ({ ...CUT, id: tipMm.join(), tipMm });
    const before = { cuts: [tip([180, 0, 80]), tip([-180, 0, 80])], centre: [0, 0, 80] };
    const after = { cuts: [tip([175, 20, 95])], centre: [0, 5, 85] };
    expect(stillStanding(before, after).map(({ cutId }) => cutId)).toEqual(['180,0,80']);
  });

  it('does not compare a photo with the plant in the round', () => {
    const round = { cuts: [{ ...CUT, tipMm: [1, 2, 3] as const }], centre: [0, 0, 0] };
    expect(() => stillStanding(planned, round)).toThrow(
      'Expected the space of the planned cuts for later but received 3',
    );
  });

  it('is told in words', () => {
    const at = (clock: number, standsOutMm: number | null): StillStanding => ({
      cutId: '',
      clock,
      standsOutMm,
      standsOutPercent: 15,
    });
    expect(plannedAndDoneWords(7, [at(3, 22.4)])).toBe(
      '6 of 7 tips are gone; the one at 3 o’clock still stands 22 mm out.',
    );
    expect(plannedAndDoneWords(3, [at(3, 22), at(9, null)])).toBe(
      '1 of 3 tips is gone; the one at 3 o’clock still stands 22 mm out, the one at 9 o’clock still stands out by 15 % of the ball’s radius.',
    );
    expect(plannedAndDoneWords(1, [at(3, 22)])).toBe(
      'The tip is not gone; the one at 3 o’clock still stands 22 mm out.',
    );
    expect(plannedAndDoneWords(4, [])).toBe('All 4 tips are gone.');
    expect(plannedAndDoneWords(1, [])).toBe('The tip is gone.');
  });
});
