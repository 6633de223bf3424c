import { describe, expect, it } from 'vitest';
import {
  facesAfter,
  hoursWords,
  rhythmStepDeg,
  rhythmWords,
  turnedTodayWords,
} from '../../../web/src/light/light-words.ts';
import { stepsToOffer } from '../../../web/src/light/steps-to-offer.ts';

const WEEKLY = { everyDays: 7, byDeg: 90, way: 'clockwise' } as const;

describe('the rhythm of turning', () => {
  it('is told in a line', () => {
    expect(rhythmWords(WEEKLY)).toBe('A quarter turn clockwise every 7 days');
    expect(rhythmWords({ everyDays: 1, byDeg: 45, way: 'anticlockwise' })).toBe(
      'An eighth of a turn anticlockwise every day',
    );
    expect(rhythmWords({ ...WEEKLY, everyDays: null })).toContain('without a reminder');
  });

  it('brings the side further round anticlockwise to the light when the pot is turned clockwise', () => {
    expect(facesAfter(0, rhythmStepDeg(WEEKLY))).toBe(90);
    expect(facesAfter(300, 90)).toBe(30);
    expect(facesAfter(0, rhythmStepDeg({ ...WEEKLY, way: 'anticlockwise' }))).toBe(270);
  });
});

describe('the buttons that write a turn down', () => {
  it('say what was done today', () => {
    expect(turnedTodayWords(90)).toBe('Turned a quarter clockwise today');
    expect(turnedTodayWords(-45)).toBe('Turned an eighth anticlockwise today');
    expect(turnedTodayWords(135)).toBe('Turned three eighths clockwise today');
    expect(turnedTodayWords(180)).toBe('Turned half round today');
  });

  it('offer the advised turn first and the rhythm’s beside it, once when they are the same', () => {
    // Advice counts anticlockwise: −90 is a quarter clockwise.
    expect(stepsToOffer(-90, 90)).toEqual([90]);
    expect(stepsToOffer(45, 90)).toEqual([-45, 90]);
    expect(stepsToOffer(180, 180)).toEqual([180]);
    expect(stepsToOffer(0, 90)).toEqual([90]);
    expect(stepsToOffer(null, -90)).toEqual([-90]);
  });
});

describe('the length of a day', () => {
  it('is in hours and minutes', () => {
    expect(hoursWords(13.334)).toBe('13 h 20');
    expect(hoursWords(8)).toBe('8 h 00');
    expect(hoursWords(7.9999)).toBe('8 h 00');
  });
});
