import { describe, expect, it } from 'vitest';
import { day } from '../../core/day/day.ts';
import { numberWords, plusMinusWords } from '../../web/src/measures/reading.ts';
import { agoWords, dayWords, shortDayWords, showWords, todayHere } from '../../web/src/words/day-words.ts';
import { benchHeadline, urgencyOf, urgencyOfRow } from '../../web/src/words/need-words.ts';

const TODAY = day('2026-11-25');

describe('a day in words', () => {
  it('is counted by date', () => {
    expect(agoWords('2026-11-25', TODAY)).toBe('today');
    expect(agoWords('2026-11-24', TODAY)).toBe('yesterday');
    expect(agoWords('2026-11-22', TODAY)).toBe('3 days ago');
    expect(agoWords('2026-10-28', TODAY)).toBe('4 weeks ago');
    expect(agoWords('2026-12-01', TODAY)).toBe('in 6 days');
  });

  it('reads in the manner of the locale and never slips a day', () => {
    expect(dayWords('2026-11-22', TODAY, 'en-GB')).toBe('Sun 22 Nov');
    expect(dayWords('2027-06-12', TODAY, 'en-GB')).toBe('Sat, 12 Jun 2027');
    expect(shortDayWords('2026-03-01', 'de-DE')).toBe('1. März');
  });

  it('is today by the clock of the device', () => {
    expect(todayHere(new Date(2026, 1, 3, 23, 59))).toBe('2026-02-03');
  });

  it('tells how far the show is', () => {
    expect(showWords('2027-06-12', TODAY)).toBe('28 weeks to the show');
    expect(showWords('2026-11-28', TODAY)).toBe('3 days to the show');
    expect(showWords('2026-11-26', TODAY)).toBe('1 day to the show');
    expect(showWords('2026-11-25', TODAY)).toBe('show day is today');
    expect(showWords('2026-11-11', TODAY)).toBe('show was 2 weeks ago');
  });
});

describe('what a bench needs', () => {
  const advice = (urgency: 0 | 1 | 2 | 3) => ({
    kind: 'turn' as const,
    urgency,
    what: '',
    where: null,
    howMuch: null,
    why: '',
    sureness: 'sure' as const,
    caution: null,
  });

  it('is the most pressing of its advice', () => {
    expect(urgencyOf([advice(1), advice(3), advice(2)])).toBe(3);
    expect(urgencyOf([])).toBe(0);
  });

  it('is a look this week when measuring broke off', () => {
    expect(urgencyOfRow({ advice: [advice(0)], newest: { state: 'failed' } })).toBe(2);
    expect(urgencyOfRow({ advice: [advice(3)], newest: { state: 'failed' } })).toBe(3);
  });

  it('stands in one sentence on top', () => {
    expect(benchHeadline([3, 2, 0])).toBe('One plant needs you today');
    expect(benchHeadline([2, 2, 0])).toBe('Nothing for today. Two plants need you this week');
    expect(benchHeadline([1, 0])).toBe('Nothing needs doing today');
    expect(benchHeadline(Array(12).fill(3))).toBe('12 plants need you today');
    expect(benchHeadline([2, 0], 1)).toBe('There is work today on 1 plant');
  });
});

describe('a number in words', () => {
  it('has a tenth only where a tenth means something', () => {
    expect(numberWords(84.4, 'roundness')).toBe('84');
    expect(numberWords(6.14, 'lopsidedness')).toBe('6.1');
    expect(numberWords(14.4, 'outOfRound')).toBe('14');
  });

  it('never has a plus-minus of nothing', () => {
    expect(plusMinusWords(0.01)).toBe('±0.1');
    expect(plusMinusWords(2.04)).toBe('±2');
    expect(plusMinusWords(12.6)).toBe('±13');
    expect(plusMinusWords(null)).toBeNull();
  });
});
