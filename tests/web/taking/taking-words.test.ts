import { describe, expect, it } from 'vitest';
import {
  COUNT_MEANINGS,
  markInPictureWords,
  markPlaceWords,
  shotName,
  stepWords,
} from '../../../web/src/taking/taking-words.ts';
import { readTurn, turnEntryOf } from '../../../web/src/taking/turn-entry.ts';

describe('what to do for the next shot', () => {
  it('begins with the mark to the camera', () => {
    expect(stepWords(0, null)).toBe('Turn the mark to the camera');
    expect(stepWords(90, null)).toBe('From the mark at the camera, a quarter turn clockwise');
  });

  it('goes on from how the pot stands', () => {
    expect(stepWords(45, 0)).toBe('Turn the pot an eighth of a turn clockwise');
    expect(stepWords(0, 135)).toBe('Turn the pot three eighths of a turn anticlockwise');
    expect(stepWords(45, 45)).toBe('Leave the pot as it stands');
  });

  it('says where the mark then points: clockwise from the camera at 6, as the pot is turned', () => {
    expect(markPlaceWords(0)).toContain('6 o’clock, where the camera is');
    expect(markPlaceWords(45)).toContain('points to half past 7');
    expect(markPlaceWords(90)).toContain('points to 9 o’clock');
    expect(markPlaceWords(180)).toContain('points to 12 o’clock');
  });

  it('says where the mark is to be seen: turned clockwise it goes to the left', () => {
    expect(markInPictureWords(0)).toContain('in front, in the middle');
    expect(markInPictureWords(45)).toBe(
      'In the picture the mark is in front, 7 tenths of the way from the middle of the rim to its left end.',
    );
    expect(markInPictureWords(90)).toContain('at the left end');
    expect(markInPictureWords(135)).toContain('behind the plant, 7 tenths of the way to the rim’s left end');
    expect(markInPictureWords(180)).toContain('hidden behind');
    expect(markInPictureWords(270)).toContain('at the right end');
  });

  it('names each shot', () => {
    expect(shotName(0)).toBe('Mark to the camera');
    expect(shotName(22.5)).toBe('A sixteenth of a turn clockwise, 22.5°');
  });
});

describe('what a number of views tells', () => {
  it('gives the share by which the solid of a round plant is too large: 27.3, 5.5, 2.3 and 1.3 %', () => {
    // Closed form (2k ÷ π) tan(π ÷ 2k) for a round body: 1.2732, 1.0548, 1.0235, 1.0131.
    expect(COUNT_MEANINGS[2].cannot).toContain('27.3 %');
    expect(COUNT_MEANINGS[4].cannot).toContain('5.5 %');
    expect(COUNT_MEANINGS[6].cannot).toContain('2.3 %');
    expect(COUNT_MEANINGS[8].cannot).toContain('1.3 %');
  });
});

describe('a turn as entered', () => {
  it('is one of those offered, another in degrees, or not known', () => {
    expect(turnEntryOf(45)).toEqual({ choice: '45', degrees: '' });
    expect(turnEntryOf(37)).toEqual({ choice: 'other', degrees: '37' });
    expect(turnEntryOf(null)).toEqual({ choice: 'unknown', degrees: '' });
    for (const turnDeg of [0, 45, 37, 22.5, null]) {
      expect(readTurn(turnEntryOf(turnDeg))).toEqual({ ok: true, turnDeg });
    }
  });

  it.each(['', 'a quarter', '360', '-5'])('%j is sent back with its sentence', (degrees) => {
    expect(readTurn({ choice: 'other', degrees })).toEqual({
      ok: false,
      fault: 'Give the turn as 0 to 359 degrees, for example 90.',
    });
  });

  it('takes a comma for a point', () => {
    expect(readTurn({ choice: 'other', degrees: '22,5°' })).toEqual({ ok: true, turnDeg: 22.5 });
  });
});
