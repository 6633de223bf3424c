import { describe, expect, it } from 'vitest';
import { placeWords, sideWords } from '../../core/turned/place-words.ts';
import { compassWords } from '../../web/src/words/compass-words.ts';
import { potTurnWords, turnAmountWords } from '../../web/src/words/turn-words.ts';

describe('a place on the clock from above', () => {
  it.each([
    [0, '6 o’clock'],
    [90, '3 o’clock'],
    [180, '12 o’clock'],
    [270, '9 o’clock'],
    [359, '6 o’clock'],
  ])('azimuth %d is at %s: anticlockwise from the mark', (azimuth, words) => {
    expect(placeWords(azimuth)).toBe(words);
  });

  it('has half hours where an eighth turn needs them, and only there', () => {
    expect([45, 135, 225, 315].map(placeWords)).toEqual([
      'half past 4',
      'half past 1',
      'half past 10',
      'half past 7',
    ]);
    expect(placeWords(165)).toBe('half past 12');
    expect(placeWords(46.3)).toBe('4 o’clock');
    expect(sideWords(45)).toBe('the side at half past 4');
    expect(sideWords(88)).toBe('the 3 o’clock side');
  });
});

describe('a turn of the pot in words', () => {
  it('goes the way of the clock when it is positive, and the shorter way round', () => {
    expect(potTurnWords(90)).toBe('a quarter turn clockwise');
    expect(potTurnWords(-45)).toBe('an eighth of a turn anticlockwise');
    expect(potTurnWords(315)).toBe('an eighth of a turn anticlockwise');
    expect(potTurnWords(180)).toBe('half a turn');
    expect(potTurnWords(0)).toBeNull();
    expect(potTurnWords(360)).toBeNull();
  });

  it('is in degrees where it has no name', () => {
    expect(turnAmountWords(22.5)).toBe('a sixteenth of a turn');
    expect(turnAmountWords(-37.25)).toBe('37.3°');
  });
});

describe('a bearing in words', () => {
  it('is the nearest of sixteen points, clockwise from north', () => {
    expect([0, 90, 180, 270, 359, 200, 11.3].map(compassWords)).toEqual([
      'north',
      'east',
      'south',
      'west',
      'north',
      'south-south-west',
      'north-north-east',
    ]);
  });
});
