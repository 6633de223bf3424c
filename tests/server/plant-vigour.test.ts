import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../core/day/day.ts';
import type { PhotoReport } from '../../core/report.ts';
import { photographedPlant } from './fixtures/photographed-plant.ts';

const FIRST = day('2026-04-05');
const SECTORS = 24;

/** A canopy that stands so high and wide, with its leaf's middle at half of its height times `sunk`. */
function standing(heightMm: number, spreadMm: number, { sunk = 1, reach = 1 } = {}): Partial<PhotoReport> {
  const reachMm = Array.from({ length: SECTORS }, () => reach * 110);
  return {
    scale: { mmPerPx: 0.5, from: 'rim' },
    ball: {
      centrePx: [320, 240],
      radiusPx: 200,
      radiusMm: 100,
      radiusPlusMinusPx: 2,
      radiusPlusMinusMm: 2,
      outOfRoundPx: 10,
      outOfRoundMm: 5,
      openArcDeg: 270,
    },
    canopy: {
      areaPx: 4 * heightMm * spreadMm * 0.8,
      widthPx: 2 * spreadMm,
      heightPx: 2 * heightMm,
      widthMm: spreadMm,
      heightMm,
      solidity: 0.9,
      gapFraction: 0.03,
      flowerShare: 0,
    },
    stature: {
      heightPx: 2 * heightMm,
      spreadPx: 2 * spreadMm,
      middlePx: heightMm * sunk,
      areaPx: 4 * heightMm * spreadMm * 0.8,
      reachPx: reachMm.map((mm) => 2 * mm),
      heightMm,
      spreadMm,
      middleMm: (heightMm / 2) * sunk,
      areaMm2: heightMm * spreadMm * 0.8,
      reachMm,
    },
  };
}

function open(base: number, { tightness = 0.92, thin = [] as readonly number[] } = {}): Partial<PhotoReport> {
  return {
    gaps: {
      sectors: [12, 3, 9].map((clock) => ({
        clock,
        gapFraction: thin.includes(clock) ? 0.3 : 0.05,
        plusMinus: 0.03,
        isThin: thin.includes(clock),
      })),
      openBase: base,
      openBasePlusMinus: 0.03,
      tightness,
      tightnessPlusMinus: 0.02,
    },
  };
}

const weeks = (...reports: readonly Partial<PhotoReport>[]) =>
  reports.map((facts, week) => [addDays(FIRST, 7 * week), facts] as const);

const LIMP = standing(160, 235, { sunk: 0.9, reach: 1.15 });

describe('a plant that hangs', () => {
  it('is said to look limp, and is left out only after the grower’s yes', async () => {
    const { page, send } = await photographedPlant({ photos: weeks(standing(200, 240), LIMP) });
    const { wilt, sittings } = await page();
    expect(wilt).toMatchObject({
      state: 'limp',
      sittingId: sittings[0]?.id,
      against: FIRST,
      leaveOutFor: 'limp when photographed',
    });
    expect(wilt?.words).toContain('it looks limp');
    expect(sittings[0]?.leftOut).toBeNull();
    const leftOut = wilt?.state === 'limp' ? wilt.leaveOutFor : null;
    await send('PATCH', `/api/sittings/${sittings[0]?.id}`, { leftOut });
    const after = await page();
    expect(after.wilt).toMatchObject({ state: 'not-told' });
    expect(after.growth?.points).toHaveLength(1);
  });

  it('is said to be dry on purpose near a deep stop', async () => {
    const { page, send, plantId } = await photographedPlant({ photos: weeks(standing(200, 240), LIMP) });
    await send('POST', `/api/plants/${plantId}/stops`, { day: addDays(FIRST, 9), depth: 'deep' });
    const { wilt } = await page();
    expect(wilt).toMatchObject({ state: 'dry-on-purpose', leaveOutFor: 'dry on purpose round a stop' });
    expect(wilt?.words).toContain('kept dry on purpose until 21 April 2026');
  });

  it('is held against the same side only', async () => {
    const { page, send } = await photographedPlant({ photos: weeks(standing(200, 240), LIMP) });
    const view = (await page()).sittings[0]?.views[0];
    await send('PATCH', `/api/views/${view?.id}`, { turnDeg: 90 });
    expect((await page()).wilt).toMatchObject({ state: 'not-told' });
  });

  it('that was cut meanwhile is not judged', async () => {
    const { page, send, plantId } = await photographedPlant({ photos: weeks(standing(200, 240), LIMP) });
    await send('POST', `/api/plants/${plantId}/notes`, { day: addDays(FIRST, 3), kind: 'took-missed-tips' });
    expect((await page()).wilt?.words).toContain('Cut on 8 April 2026');
  });
});

describe('growth on a plant’s page', () => {
  it('is told a week since the last stop', async () => {
    const sizes = [200, 204, 209, 212, 217].map((mm) => standing(mm, mm + 30));
    const { page, send, plantId } = await photographedPlant({ photos: weeks(standing(240, 300), ...sizes) });
    await send('POST', `/api/plants/${plantId}/stops`, { day: FIRST, depth: 'tip' });
    const { growth } = await page();
    expect(growth?.points.map(({ heightMm }) => heightMm)).toEqual([240, 200, 204, 209, 212, 217]);
    expect(growth?.stops).toEqual([FIRST]);
    expect(growth?.rates.height).toMatchObject({ n: 5, direction: 'rising', fromDay: addDays(FIRST, 7) });
    expect(growth?.words).toMatch(/^Since 12 April 2026: 4\.\d mm a week higher/);
  });

  it('without a scale has no points and says why', async () => {
    const { page } = await photographedPlant({ photos: weeks({}) });
    expect((await page()).growth).toMatchObject({ points: [], rates: { height: null } });
    expect((await page()).growth?.words).toContain('No sitting has a scale yet');
  });
});

describe('fill on a plant’s page', () => {
  it('names thin sides and the light that a clean-up let to the base', async () => {
    const { page, send, plantId } = await photographedPlant({
      photos: weeks(open(0.1), open(0.25, { thin: [3] })),
    });
    await send('POST', `/api/plants/${plantId}/notes`, { day: addDays(FIRST, 2), kind: 'cleared-leaf' });
    const { fill } = await page();
    expect(fill?.newest).toMatchObject({ thinClocks: [3], openBase: { share: 0.25, plusMinus: 0.03 } });
    expect(fill?.newest?.words).toContain('Thin at 3 o’clock in the photo.');
    expect(fill?.cleanUps).toMatchObject([{ beforeDay: FIRST, afterDay: addDays(FIRST, 7) }]);
    expect(fill?.cleanUps[0]?.words).toBe(
      'More light reaches the base: 25 % of the lowest third is open, 10 % before.',
    );
    expect(fill).toMatchObject({ tightnessWords: null, comparedWith: 0 });
  });

  it('asks for the photo after a clean-up', async () => {
    const { page, send, plantId } = await photographedPlant({ photos: weeks(open(0.1)) });
    await send('POST', `/api/plants/${plantId}/notes`, { day: FIRST, kind: 'cleared-leaf' });
    expect((await page()).fill?.cleanUps[0]?.words).toContain('The next photo of the same side shows');
  });

  it('is set beside other plants of the kind about as long after their stop', async () => {
    const bench = await photographedPlant({ photos: weeks(open(0.1)) });
    const { page, send, plantId, addPlant, photograph } = bench;
    const stop = (id: string) =>
      send('POST', `/api/plants/${id}/stops`, { day: addDays(FIRST, -30), depth: 'tip' });
    await stop(plantId);
    for (const tightness of [0.8, 0.85, 0.92]) {
      const other = await addPlant({ name: `At ${tightness}` });
      await photograph(addDays(FIRST, 3), open(0.1, { tightness }), other.id);
      await stop(other.id);
    }
    const { fill } = await page();
    expect(fill?.comparedWith).toBe(3);
    expect(fill?.tightnessWords).toBe(
      'The canopy fills 92 % of its ball: tighter than 2 of your 3 earlier plants, about like 1, looser than 0.',
    );
  });
});
