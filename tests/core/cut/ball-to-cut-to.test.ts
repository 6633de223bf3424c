import { describe, expect, it } from 'vitest';
import {
  type BallToCutTo,
  ballToCutTo,
  type PresentPlant,
  type WayToCut,
} from '../../../core/cut/ball-to-cut-to.ts';
import { day } from '../../../core/day/day.ts';
import { type ExpectedGrowth, expectedGrowth } from '../../../core/growth/expected-growth.ts';

const REGAL: PresentPlant = {
  ballRadiusMm: 140,
  plusMinusMm: 3,
  kind: 'regal',
  today: day('2026-01-31'),
  showDay: day('2026-06-20'),
};
/** Known to grow by 60 mm, half of it in 5 weeks. */
const KNOWN: ExpectedGrowth = {
  logGrowthMm: { mean: Math.log(60), sd: 0.1 },
  logWeeksToHalf: { mean: Math.log(5), sd: 0.1 },
  restsOn: 'plant',
};

function ball(way: WayToCut, present: Partial<PresentPlant> = {}): BallToCutTo {
  const found = ballToCutTo(way, { ...REGAL, ...present });
  if (!found.ok) throw new Error(found.hint);
  return found;
}

describe('evening up', () => {
  it('cuts to the plant’s own ball and is all done by tip stops or single stems', () => {
    expect(ball({ kind: 'even-up' })).toMatchObject({
      radiusMm: 140,
      range: [137, 143],
      needsDeepStops: false,
      dateEffectWords: null,
      words: 'Even up to its own ball, 280 mm across.',
    });
  });

  it('has no range where the plus-minus is not known', () => {
    expect(ball({ kind: 'even-up' }, { plusMinusMm: null }).range).toBeNull();
  });
});

describe('a width of the grower’s own', () => {
  it('is reached by tip stops when it is near', () => {
    const found = ball({ kind: 'width', widthMm: 250 });
    expect(found).toMatchObject({ radiusMm: 125, range: null, needsDeepStops: false });
    expect(found.words).toBe(
      'Cut to a ball 250 mm across: about 15 mm off all round, which tip stops reach.',
    );
    expect(found.dateEffectWords).toMatch(
      /^After a tip stop today full bloom begins .+; the chance of being late for the show is \d+ %\. Default of 18–19 weeks/,
    );
  });

  it('needs deep stops when it is far, and says what that does to the date', () => {
    const found = ball({ kind: 'width', widthMm: 200 });
    expect(found.needsDeepStops).toBe(true);
    expect(found.words).toContain(
      'about 40 mm off all round, more than a tip stop takes (30 mm), so it needs deeper stops',
    );
    // 24–26 weeks on from 31 January are 18 July to 1 August, weeks after the show.
    expect(found.dateEffectWords).toMatch(
      /^After a deep stop today full bloom begins .+; the chance of being late for the show is (9\d|over 99) %\. Default of 24–26 weeks/,
    );
  });

  it('says when nothing need come off', () => {
    const found = ball({ kind: 'width', widthMm: 320 });
    expect(found.words).toContain('nothing need come off');
    expect([found.needsDeepStops, found.dateEffectWords]).toEqual([false, null]);
  });

  it('is refused where hardly anything would be left', () => {
    const found = ballToCutTo({ kind: 'width', widthMm: 80 }, REGAL);
    expect(found).toMatchObject({ ok: false, reason: 'out-of-reach' });
    expect(found.ok ? '' : found.hint).toContain(
      'a ball 80 mm across from a plant of 280 mm: more than two thirds off',
    );
  });

  it('wants a width', () => {
    expect(() => ballToCutTo({ kind: 'width', widthMm: 0 }, REGAL)).toThrow(
      'Expected a positive number for widthMm but received 0',
    );
  });
});

describe('back from the show', () => {
  it('leaves room for what will grow', () => {
    const found = ball({ kind: 'show', widestMm: 340, growth: KNOWN });
    // Twenty weeks are four times the half: nearly all of the 60 mm.
    expect(found.radiusMm).toBeGreaterThan(109);
    expect(found.radiusMm).toBeLessThan(116);
    const [low, high] = found.range as [number, number];
    expect(low).toBeGreaterThan(95);
    expect(low).toBeLessThan(found.radiusMm);
    expect(high).toBeGreaterThan(found.radiusMm);
    expect(found.why).toContain(
      'By the show on 20 June 2026, 20 weeks from now, the radius is expected to grow by about',
    );
    expect(found.why).toContain('how this plant grew between its earlier stops');
  });

  it('says that a guess is a guess, with a wide range', () => {
    const found = ball({ kind: 'show', widestMm: 420, growth: expectedGrowth(140) });
    expect(found.why).toContain('a guess of ours');
    const [low, high] = found.range as [number, number];
    expect(high - low).toBeGreaterThan(100);
    expect(found.words).toContain('if it grows fast no cut is hard enough');
  });

  it('needs deep stops where the show allows little, and says what that does to the date', () => {
    const found = ball({ kind: 'show', widestMm: 280, growth: KNOWN });
    expect(found.needsDeepStops).toBe(true);
    expect(found.dateEffectWords).toContain('After a deep stop today full bloom begins');
  });

  it('cuts nothing for the width where the plant may grow on', () => {
    const found = ball({ kind: 'show', widestMm: 500, growth: KNOWN });
    expect(found.radiusMm).toBeGreaterThan(140);
    expect(found.words).toContain('for the width nothing need come off');
  });

  it('is refused with a way out where no cut is hard enough', () => {
    const found = ballToCutTo({ kind: 'show', widestMm: 140, growth: KNOWN }, REGAL);
    expect(found).toMatchObject({ ok: false, reason: 'out-of-reach' });
    expect(found.ok ? '' : found.hint).toMatch(
      /^It is expected to grow too much in the 20 weeks to the show for 140 mm\. .* Stop it again later, or allow it to be wider\.$/,
    );
  });

  it('wants a show that is to come', () => {
    const way: WayToCut = { kind: 'show', widestMm: 340, growth: KNOWN };
    expect(ballToCutTo(way, { ...REGAL, showDay: null })).toMatchObject({ reason: 'no-show-day' });
    expect(ballToCutTo(way, { ...REGAL, showDay: day('2026-01-30') })).toMatchObject({
      reason: 'show-over',
      hint: 'The show on 30 January 2026 is over: set the day of the next one.',
    });
  });
});

describe('a plant without a scale', () => {
  it('has no ball in mm, and the grower is told how to get one', () => {
    const found = ballToCutTo({ kind: 'even-up' }, { ...REGAL, ballRadiusMm: null });
    expect(found).toMatchObject({ ok: false, reason: 'no-scale' });
    expect(found.ok ? '' : found.hint).toContain('Give the pot’s rim diameter');
  });
});
