import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import type { Note } from '../../../server/schemas/sitting.ts';
import {
  bloomEvents,
  eventWords,
  notedWords,
  offerLine,
  readingWords,
  type ToldBloom,
} from '../../../web/src/bloom/bloom-words.ts';
import { curveFrame, shareOn } from '../../../web/src/bloom/curve-frame.ts';
import { isBloomAhead, type Plan } from '../../../web/src/season/plan/plan-words.ts';

const TODAY = day('2026-11-22');
const date = (on: string, from90 = on, to90 = on, isPast = true) => ({
  day: day(on),
  from90: day(from90),
  to90: day(to90),
  isPast,
});
const reading = (on: string, share: number) => ({ day: on, share, plusMinus: 0.02 });
const point = (on: string, share: number, isForecast = false) => ({
  day: on,
  share,
  low90: share * 0.9,
  high90: share * 1.1,
  isForecast,
});
const bloom = (more: object = {}) =>
  ({
    state: 'told',
    sureness: 'likely',
    since: null,
    readings: [reading('2026-08-02', 0), reading('2026-11-01', 0.1), reading('2026-11-15', 0.4)],
    curve: [
      point('2026-08-02', 0),
      point('2026-11-01', 0.1),
      point('2026-11-15', 0.4),
      point('2026-12-06', 0.3, true),
    ],
    firstColour: date('2026-10-25', '2026-10-23', '2026-10-27'),
    half: date('2026-11-08', '2026-11-06', '2026-11-10'),
    full: date('2026-11-12'),
    fading: null,
    ...more,
  }) as unknown as ToldBloom;

describe('the days of a bloom in words', () => {
  it('are numbered in their order; fading is told only once full bloom is reached', () => {
    expect(bloomEvents(bloom()).map(({ number, words }) => [number, words])).toEqual([
      [1, 'First colour'],
      [2, 'Half open'],
      [3, 'Full bloom'],
    ]);
    const fading = date('2026-12-01', '2026-11-25', '2026-12-20', false);
    expect(bloomEvents(bloom({ fading })).at(-1)).toMatchObject({ number: 4, words: 'Fading' });
  });

  it('say their interval, that they are foretold, or the range alone when nobody can name the day', () => {
    const [first, , full] = bloomEvents(bloom());
    if (!first || !full) throw new TypeError('Expected three days');
    expect(eventWords(first, TODAY)).toMatch(/^First colour: about .*25.* \(.*23.* to .*27.*\)$/);
    expect(eventWords(full, TODAY)).toMatch(/^Full bloom: about [^(]*$/);
    const ahead = date('2026-12-01', '2026-11-25', '2026-12-20', false);
    expect(eventWords({ ...full, date: ahead }, TODAY)).toMatch(/^Full bloom: likely about/);
    const open = bloomEvents(bloom({ sureness: 'unsure', full: ahead })).at(-1);
    if (!open) throw new TypeError('Expected a day');
    expect(eventWords(open, TODAY)).toMatch(/^Full bloom: between .*25.* and .*20/);
  });

  it('say when a share has no plus-minus by leaving it out', () => {
    expect(readingWords({ day: TODAY, share: 0.354, plusMinus: 0.024 })).toBe('35 % ±2.4');
    expect(readingWords({ day: TODAY, share: 0.354, plusMinus: null })).toBe('35 %');
  });

  it('name what the log has of this bloom, and nothing of the one before', () => {
    const note = (kind: string, on: string) => ({ kind, day: on }) as Note;
    const notes = [
      note('first-flower', '2026-05-01'),
      note('first-flower', '2026-10-26'),
      note('note', '2026-11-01'),
    ];
    expect(notedWords(notes, bloom(), TODAY)).toMatch(/^In your log: first flower open, .*26/);
    expect(notedWords([note('full-bloom', '2026-05-01')], bloom(), TODAY)).toBeNull();
  });

  it('say that an accepted day would be moved', () => {
    const offer = {
      event: 'full-bloom',
      logKind: 'full-bloom',
      ...date('2026-11-12'),
      movesNoteId: 'a-note',
      words: '',
    };
    expect(offerLine(offer as unknown as Parameters<typeof offerLine>[0], TODAY)).toMatch(
      /moved from an earlier day$/,
    );
  });
});

describe('the frame of the curve', () => {
  it('leaves out the long green weeks before the first colour', () => {
    const { from } = curveFrame(bloom(), null, TODAY);
    expect(from).toBe('2026-09-25');
  });

  it('runs to the show where it is near, not where it is months away', () => {
    expect(curveFrame(bloom(), '2026-12-19', TODAY).to).toBe('2026-12-19');
    expect(curveFrame(bloom(), '2027-06-12', TODAY).to).toBe('2026-12-06');
  });

  it('has no more than six marks up the side, the ground among them', () => {
    const { ticks, top } = curveFrame(bloom(), null, TODAY);
    expect(ticks[0]).toBe(0);
    expect(ticks.length).toBeLessThanOrEqual(6);
    expect(top).toBeGreaterThan(42);
  });

  it('reads the curve between its points', () => {
    const { curve } = bloom();
    expect(shareOn(curve, '2026-11-08')).toBeCloseTo(0.25);
    expect(shareOn(curve, '2026-01-01')).toBe(0);
    expect(shareOn(curve, '2027-01-01')).toBe(0.3);
  });
});

describe('a bloom and the plan', () => {
  const plan = (state: string) => ({ steps: [{ role: 'last', state }] }) as unknown as Plan;

  it('belong together unless the last stop can still be made', () => {
    expect(['to-come', 'open'].every((state) => isBloomAhead(plan(state)))).toBe(true);
    expect(['done', 'overdue', 'left-out'].some((state) => isBloomAhead(plan(state)))).toBe(false);
  });
});
