import { describe, expect, it } from 'vitest';
import { day } from '../../../core/day/day.ts';
import { statureOf } from '../../../core/vigour/stature.ts';
import { looksLimp, type StatureReading, type WiltFacts } from '../../../core/vigour/wilt.ts';
import { type Standing, standingReading, tipStop } from './limp-plants.ts';

const NOTHING: WiltFacts = { cutDays: [], dryUntil: null };
const FIRM: StatureReading = {
  day: day('2026-05-01'),
  height: 200,
  spread: 260,
  middle: 100,
  area: 39_000,
  // Clockwise from straight up: above, right, below, left.
  reach: [200, 130, 20, 130],
  plusMinusShare: 0.03,
};
const LIMP: StatureReading = {
  ...FIRM,
  day: day('2026-05-08'),
  height: 165,
  spread: 235,
  middle: 78,
  area: 29_500,
  reach: [165, 130, 60, 120],
};

const isLimp = (now: StatureReading, before = [FIRM], facts = NOTHING) => {
  const found = looksLimp(now, before, facts);
  if (!found.ok) throw new Error(found.hint);
  return found.isLimp;
};

describe('a limp plant', () => {
  it('has fallen in height and in the mean height of its leaf and not widened', () => {
    expect(isLimp(LIMP)).toBe(true);
    expect(isLimp({ ...LIMP, spread: 270 })).toBe(false);
    expect(isLimp({ ...LIMP, height: 196 })).toBe(false);
    // The top is gone and the leaf below it stands where it stood: a cut.
    expect(isLimp({ ...LIMP, middle: 95 })).toBe(false);
  });

  it('hangs to where no leaf was, which a plant that was cut all round does not', () => {
    const all = { ...LIMP, reach: FIRM.reach.map((reach) => 0.85 * reach) };
    expect(isLimp(all)).toBe(false);
    const found = looksLimp(all, [FIRM], NOTHING);
    expect(found.ok && found.hangsOut).toBe(0);
  });

  it('falls together, which a plant that was cut and lets light in does not', () => {
    expect(isLimp({ ...LIMP, area: 24_000 })).toBe(false);
  });

  it('is told in any unit, and not where it falls within its plus-minus', () => {
    const half = (one: StatureReading) => ({
      ...one,
      height: one.height / 2,
      spread: one.spread / 2,
      middle: one.middle / 2,
      area: one.area / 4,
      reach: one.reach.map((reach) => reach / 2),
    });
    expect(isLimp(half(LIMP), [half(FIRM)])).toBe(true);
    expect(isLimp({ ...LIMP, plusMinusShare: 0.3 })).toBe(false);
  });

  it('is never taken from a plant that was cut since, and says so', () => {
    const found = looksLimp(LIMP, [FIRM], { cutDays: [day('2026-05-03')], dryUntil: null });
    expect(found).toMatchObject({
      ok: false,
      reason: 'cut-since',
      hint: expect.stringContaining('3 May 2026'),
    });
    // The photo of a cut's own day shows the plant before it.
    expect(isLimp(LIMP, [FIRM], { cutDays: [LIMP.day], dryUntil: null })).toBe(true);
    expect(isLimp(LIMP, [FIRM], { cutDays: [day('2026-04-20')], dryUntil: null })).toBe(true);
  });

  it('is compared with the last weeks only, with their middle', () => {
    expect(looksLimp(LIMP, [{ ...FIRM, day: day('2026-03-01') }], NOTHING)).toMatchObject({
      ok: false,
      reason: 'nothing-before',
    });
    const odd = { ...FIRM, day: day('2026-05-05'), height: 150, middle: 70 };
    const weekBefore = { ...FIRM, day: day('2026-04-24') };
    expect(isLimp(LIMP, [odd, FIRM, weekBefore])).toBe(true);
  });

  it('is asked about, and told to be dry on purpose where the log says so', () => {
    const words = (facts: WiltFacts) => {
      const found = looksLimp(LIMP, [FIRM], facts);
      return found.ok ? found.words : found.hint;
    };
    expect(words(NOTHING)).toMatch(/18 % lower and 10 % narrower .*looks limp.*before you water/);
    expect(words({ ...NOTHING, dryUntil: day('2026-05-10') })).toContain('dry on purpose until 10 May 2026');
  });

  it('takes no length of 0', () => {
    expect(() => looksLimp({ ...LIMP, height: 0 }, [FIRM], NOTHING)).toThrow(
      'Expected a positive number for height',
    );
  });
});

describe('stature', () => {
  it('leaves single tips out', () => {
    const data = new Uint8Array(200 * 200);
    for (let y = 50; y < 150; y++) data.fill(1, y * 200 + 50, y * 200 + 150);
    for (let y = 10; y < 50; y++) data[y * 200 + 100] = 1;
    const stature = statureOf({ width: 200, height: 200, data }, [100, 150]);
    expect(stature?.heightPx).toBeGreaterThan(97);
    expect(stature?.heightPx).toBeLessThan(100.1);
    expect(stature?.spreadPx).toBeCloseTo(96, 0);
    expect(stature?.areaPx).toBe(100 * 100 + 40);
    // Straight up the square ends 100 px above the rim, and one ray of twelve meets the tip; to the right half of the rays meet nothing
    // and half 50 px; below none.
    expect(stature?.reachPx[0]).toBeGreaterThan(99);
    expect(stature?.reachPx[6]).toBeCloseTo(Math.sqrt(50 ** 2 / 2), 0);
    expect(stature?.reachPx[12]).toBe(0);
    expect(statureOf({ width: 200, height: 200, data }, [100, 5])).toBeNull();
  });

  it('sinks on a rendered plant that hangs, and not on one whose tips were cut', () => {
    const on = (when: string, standing: Standing) => standingReading(11, standing, day(when), 0.03);
    const firm = on('2026-05-01', { week: -1, day: 1 });
    const droop = { leafRad: 1.4, shootRad: 1, seed: 5 };
    expect(isLimp(on('2026-05-08', { week: 0, day: 2, droop }), [firm])).toBe(true);
    expect(isLimp(on('2026-05-08', { week: 0, day: 2, cuts: tipStop(25) }), [firm])).toBe(false);
    expect(isLimp(on('2026-05-08', { week: 0, day: 2, cuts: tipStop(80) }), [firm])).toBe(false);
  }, 60_000);
});
