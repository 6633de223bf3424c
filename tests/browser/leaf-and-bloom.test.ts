import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { renderView, type ViewOptions } from '../../sample-images/render/render-view.ts';
import { PLANT_SEASONS } from '../../sample-images/render/season/plants.ts';
import { sittingView } from '../../sample-images/render/season/sitting-view.ts';
import { encodePhoto } from '../../sample-images/render/write-photo.ts';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';
import { asJson, ask, grownPlant } from './grown-plant.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type AppOnDay, startOnDay } from './start-on-day.ts';
import { undoOf } from './undo-of.ts';

/** Other tests share the machine. */
const PATIENCE_MS = 180_000;
const MEASURING_MS = 240_000;

const TODAY = '2026-11-22';
const BLOOM_DAYS = ['2026-10-18', '2026-10-25', '2026-11-01', '2026-11-08', '2026-11-15', TODAY];

/** The old regal's stand with another plant in it: firm, and a week on limp, with yellow leaf low down. */
function standing(more: Partial<ViewOptions>): Promise<Buffer> {
  const season = PLANT_SEASONS.find(({ key }) => key === 'old-regal');
  if (!season) throw new TypeError('Expected the old regal among the sample plants');
  const plant = { ...season.plant, seed: 77, longShoots: [], flower: null };
  const draft = { size: 0.4, samplesPerSide: 2 };
  const { raster } = renderView({ ...sittingView({ ...season, plant }, 8, 0, draft, null), ...more });
  return encodePhoto(raster, '2026:11:22 10:00:00', false);
}

describe('leaf and bloom from the weekly photo', () => {
  let app: AppOnDay;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let inBloom: Plant;
  let limp: Plant;
  const faults: string[] = [];

  const season = () => page.getByRole('region', { name: 'Season' });
  const photo = () => page.getByRole('region', { name: 'Photo', exact: true });
  const log = () => page.getByRole('region', { name: 'Log' });
  const undo = (words: string) => undoOf(page, words);
  const answer = (plant: Plant) => ask<PlantPage>(app.url, `/plants/${plant.id}`);
  const open = async (plant: Plant) => {
    await page.goto(`${app.url}/plants/${plant.id}`);
    await season().getByRole('heading', { name: 'Season' }).waitFor();
  };

  beforeAll(async () => {
    browser = await openBrowser();
    context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      locale: 'en-GB',
      reducedMotion: 'reduce',
      timezoneId: 'Europe/Amsterdam',
    });
    context.setDefaultTimeout(PATIENCE_MS / 3);
    app = await startOnDay(context, TODAY);
    page = await context.newPage();
    noteFaults(page, faults);
    const photos = BLOOM_DAYS.map((day) => ({ file: `porch-zonal/${day}.jpg`, day }));
    const form = {
      name: 'Row zonal',
      kind: 'zonal',
      variety: 'Ember Row',
      rimMm: 140,
      showDay: '2026-12-26',
    };
    inBloom = await grownPlant(app.url, form, photos);
    limp = await ask<Plant>(
      app.url,
      '/plants',
      asJson('POST', { name: 'Slow tide', kind: 'regal', variety: 'Slow Tide', rimMm: 150 }),
    );
    const droop = { leafRad: 1.1, shootRad: 0.8, seed: 3 };
    const ailing = { seed: 5, yellowShare: 0.16, lowest: 0.8, brownShare: 0, brownEdge: 0 };
    for (const [day, file] of [
      ['2026-11-15', await standing({})],
      [TODAY, await standing({ droop, ailing })],
    ] as const) {
      const body = new FormData();
      body.set('turnDeg', '0');
      body.set('day', day);
      body.set('photos', new File([new Uint8Array(file)], `${day}.jpg`));
      await ask(app.url, `/plants/${limp.id}/photos`, { method: 'POST', body });
    }
    await app.whenMeasured();
  }, MEASURING_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it(
    'draws the curve of the bloom with its days, and says the same in a table',
    async () => {
      await open(inBloom);
      const curve = season().getByRole('img', { name: /^Share of the canopy in flower.*Full bloom: about/ });
      await curve.locator('svg').waitFor();
      await season()
        .getByRole('list', { name: 'Days of the bloom' })
        .getByText(/^Half open: about \w+,? \d+ \w+ \(/)
        .waitFor();
      await season().getByText('The same as a table').first().click();
      const newest = season().getByRole('row', { name: /Sun,? 22 Nov.*in flower: \d+ % ±/ });
      await newest.waitFor();
      const share = Number(/in flower: (\d+) %/.exec((await newest.textContent()) ?? '')?.[1]);
      const { report } = (await answer(inBloom)).sittings[0]?.views[0] ?? {};
      expect(share).toBe(Math.round(100 * (report?.flower?.share ?? Number.NaN)));
      const foretold = season().getByRole('row', { name: /foretold: \d+ %/ });
      await expect.poll(() => foretold.count()).toBeGreaterThan(1);
      // One picture at a time: what the plan had foreseen gives way.
      await season()
        .getByRole('img', { name: /In full bloom on the show day/ })
        .waitFor({ state: 'detached' });
      expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'sets the bloom against the show, with the day until which heads are taken off',
    async () => {
      await season()
        .getByText(/days early for the show on 26 December 2026.*Take off the first heads until/)
        .waitFor();
      await season().getByRole('button', { name: 'Heads taken off today' }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'puts the days of the bloom into the record with one yes, and takes them back',
    async () => {
      await season().getByText('Put these days into the record?').waitFor();
      await season().getByRole('button', { name: 'Yes, put them in' }).click();
      await season().getByText('Put these days into the record?').waitFor({ state: 'detached' });
      await log().getByRole('listitem').filter({ hasText: 'First flower open.' }).waitFor();
      await log().getByRole('listitem').filter({ hasText: 'In full bloom.' }).waitFor();
      expect((await answer(inBloom)).notes.map(({ kind }) => kind).sort()).toEqual([
        'first-flower',
        'full-bloom',
      ]);
      await undo('Written down: the days of the bloom.').click();
      await page.getByText('Taken back.').waitFor();
      await season().getByText('Put these days into the record?').waitFor();
      expect((await answer(inBloom)).notes).toEqual([]);
    },
    PATIENCE_MS,
  );

  it(
    'remembers a no, and takes that back too',
    async () => {
      await season().getByRole('button', { name: 'No', exact: true }).click();
      await season().getByText('Put these days into the record?').waitFor({ state: 'detached' });
      await page.reload();
      await season()
        .getByRole('img', { name: /^Share of the canopy in flower/ })
        .waitFor();
      expect(await season().getByText('Put these days into the record?').count()).toBe(0);
      for (const event of ['first-colour', 'full-bloom']) {
        await ask(app.url, `/plants/${inBloom.id}/bloom-dates/${event}`, { method: 'DELETE' });
      }
      await page.reload();
      await season().getByText('Put these days into the record?').waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'shows height, width and area on the trend, and every number with its meaning',
    async () => {
      const trend = page.getByRole('region', { name: 'Over the weeks' });
      await trend.getByText('Area', { exact: true }).click();
      await trend.getByText('The same as a table').click();
      await trend.getByRole('row', { name: /22 Nov.*\d+ ±\d+ cm²/ }).waitFor();
      await page.getByText('More numbers: leaf, flower, gaps, size').click();
      const heads = page.getByRole('group').filter({ hasText: 'Flower heads seen' }).last();
      await heads.getByText(/^\d+–\d+$/).waitFor();
      await heads.getByText('Flower heads seen').click();
      await heads
        .getByText('Heads behind others and at the back are not counted.', { exact: false })
        .waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'draws yellow leaf where it stands once it is switched on, and says what a zone is',
    async () => {
      await open(limp);
      const zones = (await answer(limp)).sittings[0]?.views[0]?.report?.foliage?.where ?? [];
      expect(zones.length).toBeGreaterThan(0);
      const drawn = photo().getByRole('button', { name: /^Yellow leaf low .*It is a colour, not a cause/ });
      expect(await drawn.count()).toBe(0);
      await photo().getByRole('button', { name: 'Yellow leaf', exact: true }).click();
      await drawn.first().waitFor();
      const all = photo().getByRole('button', { name: /^Yellow leaf .*: / });
      await expect.poll(() => all.count()).toBe(zones.length);
      await drawn.first().press('Enter');
      await photo()
        .getByText(/^Yellow leaf low .*look before you clear it\.$/)
        .waitFor();
      // The labels lie apart from each other.
      const nearestPx = () =>
        photo()
          .locator('svg g[data-tone] > rect')
          .evaluateAll((plates) => {
            const boxes = plates.map((plate) => plate.getBoundingClientRect());
            const gaps = boxes.flatMap((one, at) =>
              boxes
                .slice(at + 1)
                .map((other) =>
                  Math.max(
                    Math.max(one.left, other.left) - Math.min(one.right, other.right),
                    Math.max(one.top, other.top) - Math.min(one.bottom, other.bottom),
                  ),
                ),
            );
            return Math.min(...gaps);
          });
      await expect.poll(nearestPx).toBeGreaterThan(-1);
    },
    PATIENCE_MS,
  );

  it(
    'keeps a limp plant out of the trend with one yes, and takes it in again',
    async () => {
      const finding = page.getByRole('region', { name: 'Looks limp' });
      await finding.getByText(/it looks limp\./).waitFor();
      await finding.getByRole('button', { name: 'Yes, keep it out of the trend' }).click();
      await finding.waitFor({ state: 'detached' });
      await photo()
        .getByText(/^This sitting is left out of trend and advice: limp/)
        .waitFor();
      expect((await answer(limp)).sittings[0]?.leftOut).toMatch(/^limp/);
      await undo('The sitting is left out: limp').click();
      await finding.waitFor();
      expect((await answer(limp)).sittings[0]?.leftOut).toBeNull();
    },
    PATIENCE_MS,
  );

  it(
    'asks no more once the grower said no, until that is taken back',
    async () => {
      const finding = page.getByRole('region', { name: 'Looks limp' });
      await finding.getByRole('button', { name: 'No, it counts' }).click();
      await finding.waitFor({ state: 'detached' });
      await page.reload();
      await season().getByRole('heading', { name: 'Season' }).waitFor();
      expect(await finding.count()).toBe(0);
      await page.evaluate(() => localStorage.removeItem('rondure.firm-sittings'));
      await page.reload();
      await finding.waitFor();
      await finding.getByRole('button', { name: 'No, it counts' }).click();
      await undo('Kept in the trend.').click();
      await finding.waitFor();
    },
    PATIENCE_MS,
  );

  it('met no fault on the way', () => {
    expect(faults).toEqual([]);
  });
});
