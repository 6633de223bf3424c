import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../../core/day/day.ts';
import { LOG_KINDS, type LogKind } from '../../../core/season/log-entry.ts';
import type { Note } from '../../../server/schemas/sitting.ts';
import { lineInWords, logLines } from '../../../web/src/log/log-lines.ts';
import {
  isShowDrawn,
  placedMarks,
  trendMarks,
  turnedDays,
  turnedWords,
} from '../../../web/src/trend/trend-marks.ts';

const note = (kind: LogKind, on: string, text = ''): Note => ({
  id: `${kind}${on}`,
  plantId: 'a',
  kind,
  day: day(on),
  text,
});

const SERIES = ['2026-06-07', '2026-06-14', '2026-06-21'].map((on) => ({
  day: day(on),
  sittingId: on,
  value: 80,
  plusMinus: 2,
}));

describe('the log', () => {
  it('is one list of stops, notes and turns, the newest first', () => {
    const lines = logLines({
      stops: [{ id: 's', plantId: 'a', day: day('2026-06-10'), depth: 'deep', note: '' }],
      notes: [note('watered', '2026-06-12'), note('note', '2026-06-01', 'Moved to the porch.')],
      turns: [{ id: 't', plantId: 'a', day: day('2026-06-11'), facesLightDeg: 90, note: '' }],
    });
    expect(lines.map(lineInWords)).toEqual([
      { name: 'Watered', words: '' },
      { name: 'Turned', words: 'The 3 o’clock side to the light.' },
      { name: 'Deep stop', words: 'Takes the stem further back.' },
      { name: null, words: 'Moved to the porch.' },
    ]);
  });

  it('has words for every kind', () => {
    for (const kind of LOG_KINDS) {
      const { name } = lineInWords({ kind: 'notes', entry: note(kind, '2026-06-01') });
      expect(name === null).toBe(kind === 'note');
    }
  });
});

describe('marks on the trend', () => {
  it('are the lines that may explain a shape, one a day, numbered from the oldest', () => {
    const marks = trendMarks(
      [
        note('seen-wilt', '2026-06-15', 'Forgot the porch.'),
        note('watered', '2026-06-15'),
        note('seen-grey-mould', '2026-06-10'),
        note('cleared-leaf', '2026-06-10'),
      ],
      SERIES,
    );
    expect(marks).toEqual([
      { number: 1, day: '2026-06-10', words: 'Grey mould seen. Cleared yellow and dead leaf.' },
      { number: 2, day: '2026-06-15', words: 'Limp from drought. Forgot the porch.' },
    ]);
  });

  it('leave out what the sittings could not show', () => {
    const notes = ['2026-05-23', '2026-05-24', '2026-06-21', '2026-06-22'].map((on) => note('seen-wilt', on));
    expect(trendMarks(notes, SERIES).map((mark) => mark.day)).toEqual(['2026-05-24', '2026-06-21']);
    expect(trendMarks(notes, [])).toEqual([]);
  });

  it('that stand near go into rows of their own', () => {
    const marks = [0, 1, 2, 9].map((after, at) => ({
      number: at + 1,
      day: addDays(day('2026-06-07'), after),
      words: '',
    }));
    expect(placedMarks(marks, 2).map(({ row }) => row)).toEqual([0, 1, 0, 0]);
  });
});

describe('the show on the trend', () => {
  it('is drawn when it stands near the sittings', () => {
    const [first, last] = [day('2026-03-01'), day('2026-06-01')];
    expect(isShowDrawn(day('2026-06-20'), first, last)).toBe(true);
    expect(isShowDrawn(day('2026-05-20'), first, last)).toBe(true);
    expect(isShowDrawn(day('2026-08-01'), first, last)).toBe(false);
    expect(isShowDrawn(day('2025-08-01'), first, last)).toBe(false);
  });
});

describe('the turns on the trend', () => {
  it('are the days within it, each once, oldest first', () => {
    const turns = ['2026-03-20', '2026-03-02', '2026-03-20', '2026-01-01'].map((on) => ({ day: day(on) }));
    const days = turnedDays(turns, day('2026-03-01'), day('2026-03-31'));
    expect(days).toEqual(['2026-03-02', '2026-03-20']);
    expect(turnedWords(days)).toContain('turned on');
  });
});
