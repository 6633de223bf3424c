import { describe, expect, it } from 'vitest';
import { shareOpen } from '../../core/bloom/bloom-form.ts';
import { expectedBloom } from '../../core/bloom/expected-bloom.ts';
import { addDays, day } from '../../core/day/day.ts';
import { openWorkerPool } from '../../server/measuring/worker-pool.ts';
import type { Bench, Progress } from '../../server/schemas/pages.ts';
import type { BloomFittingParts } from '../../server/season/bloom-fitting.ts';
import { reckonFits } from '../../server/season/fit-worker.ts';
import { answersAfresh, answersServed } from './fixtures/answers-afresh.ts';
import { inFlower, photographedPlant } from './fixtures/photographed-plant.ts';

const FIRST = day('2026-03-30');
const TODAY = addDays(FIRST, 63);
const FORM = { kind: 'logistic', halfDays: 40, riseDays: 16, lastsDays: 21, fallDays: 20 } as const;

/** A plant in bloom, entered for a show; its fits are reckoned by `reckon`. */
async function inBloom(reckon: BloomFittingParts['reckon']) {
  const plant = await photographedPlant({
    reckonFits: reckon,
    today: () => TODAY,
    plant: { showDay: addDays(FIRST, 90) },
    photos: Array.from({ length: 9 }, (_, week) => [
      addDays(FIRST, 7 * week),
      inFlower(0.4 * shareOpen(FORM, 7 * week)),
    ]),
  });
  const heard: Progress[] = [];
  plant.services.progress.listen((step) => heard.push(step));
  const bench = async () => ((await plant.send('GET', '/api/bench')).body as Bench).plants[0];
  return { ...plant, bench, heard };
}

function gate() {
  let open = () => {};
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { opened, open: () => open() };
}

describe('a bloom whose fit is not kept', () => {
  it('is under way on bench, calendar and work, which answer at once; then it is told', async () => {
    const { opened, open } = gate();
    const plant = await inBloom(async (fits) => {
      await opened;
      return reckonFits(fits);
    });
    expect((await plant.bench())?.isBloomUnderWay).toBe(true);
    expect((await plant.send('GET', '/api/calendar')).body.plants[0].isBloomUnderWay).toBe(true);
    expect((await plant.send('GET', '/api/work')).body.bloomsUnderWay).toBe(1);
    open();
    await expect.poll(() => plant.heard.length, { timeout: 20_000 }).toBe(1);
    expect(plant.heard).toEqual([{ plantId: plant.plantId, bloom: 'reckoned' }]);
    const told = await plant.bench();
    expect(told?.isBloomUnderWay).toBe(false);
    expect(await answersServed(plant)).toEqual(await answersAfresh(plant));
  });

  it('is waited for by the plant’s own page', async () => {
    const plant = await inBloom(async (fits) => reckonFits(fits));
    expect((await plant.page()).bloom?.state).toBe('told');
  });

  it('stays under way where the thread breaks down, and the page reckons it by itself', async () => {
    const plant = await inBloom(() => Promise.reject(new Error('broke down')));
    expect((await plant.bench())?.isBloomUnderWay).toBe(true);
    expect((await plant.page()).bloom?.state).toBe('told');
    expect((await plant.bench())?.isBloomUnderWay).toBe(true);
    expect(plant.heard).toEqual([]);
  });

  it('is reckoned in a thread as on the spot', { timeout: 60_000 }, async () => {
    const pool = openWorkerPool<Parameters<typeof reckonFits>[0], unknown[]>(
      new URL('../../server/season/fit-worker.ts', import.meta.url),
      { threads: 1 },
    );
    const question = {
      readings: Array.from({ length: 6 }, (_, week) => ({
        day: addDays(FIRST, 7 * week),
        share: 0.4 * shareOpen(FORM, 7 * week),
        plusMinus: 0.012,
      })),
      expected: expectedBloom(21),
    };
    const fits = [{ name: 'bloom', question }] as const;
    const there = await pool.run(fits);
    await pool.close();
    expect(there).toEqual(reckonFits(fits));
  });
});
