import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { CutList } from '../../server/schemas/cuts.ts';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';
import { todayHere } from '../../web/src/words/day-words.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { undoOf } from './undo-of.ts';

const SAMPLES = join(import.meta.dirname, '../../sample-images');
/** Other tests share the machine. */
const PATIENCE_MS = 240_000;

/** A sample photo stored anew: the store would not keep a photo twice. */
function shot(file: string): Promise<Buffer> {
  return sharp(readFileSync(join(SAMPLES, file)))
    .keepExif()
    .jpeg({ quality: 92 })
    .toBuffer();
}

/** Pages of a PDF as Chromium writes it: the count of its page tree. */
function pagesOf(pdf: Buffer): number {
  return Number(/\/Count (\d+)/.exec(pdf.toString('latin1'))?.[1]);
}

describe('a grower works through a cut list', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let plant: Plant;
  let sittingId: string;
  const faults: string[] = [];

  const api = async <Answer>(path: string, init?: RequestInit) => {
    const answer = await fetch(`${app.url}/api${path}`, init);
    return { status: answer.status, body: (await answer.json()) as Answer };
  };
  const addPlant = async (form: object) =>
    (
      await api<Plant>('/plants', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(form),
      })
    ).body;
  const addPhoto = async (plantId: string, file: string, turnDeg: number) => {
    const form = new FormData();
    form.set('turnDeg', String(turnDeg));
    form.set('day', todayHere());
    form.set(
      'photos',
      new File([new Uint8Array(await shot(file))], `${turnDeg}.jpg`, { type: 'image/jpeg' }),
    );
    await api(`/plants/${plantId}/photos`, { method: 'POST', body: form });
  };
  const sittingOf = async (plantId: string) =>
    (await api<PlantPage>(`/plants/${plantId}`)).body.sittings[0]?.id ?? '';
  const listOf = async (id = sittingId) => {
    await expect
      .poll(async () => (await api(`/sittings/${id}/cut-list`)).status, {
        timeout: PATIENCE_MS,
        interval: 1000,
      })
      .toBe(200);
    return (await api<CutList>(`/sittings/${id}/cut-list`)).body;
  };
  /** The row of a cut by its number. */
  const row = (number: number) =>
    page
      .getByRole('listitem')
      .filter({ has: page.getByRole('button', { name: new RegExp(`^Cut ${number}:`) }) });
  const screen = () => page.getByRole('main');
  const overflow = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
  /** Opens the choice of the ball, once the last one was kept and closed it. */
  const chooser = async () => {
    const way = page.getByRole('radio', { name: /^Even up/ });
    await way.waitFor({ state: 'hidden' });
    await page.getByText('Choose another ball').tap();
    await way.waitFor();
  };
  const outlineAfter = () => page.getByTestId('outline-after').first().getAttribute('d');

  beforeAll(async () => {
    app = await startApp('off');
    browser = await openBrowser();
    context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      reducedMotion: 'reduce',
    });
    // Shorter than the tests’ own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 2);
    page = await context.newPage();
    noteFaults(page, faults);
    plant = await addPlant({ name: 'Stairwell regal', kind: 'regal', rimMm: 150 });
    // A week after a hard stop: bare stems of many lengths.
    await addPhoto(plant.id, 'old-regal/2026-09-27.jpg', 0);
    sittingId = await sittingOf(plant.id);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it(
    'is led to it from the plant, and finds each cut with its hour and how much',
    async () => {
      const { cuts } = await listOf();
      expect(cuts.length).toBeGreaterThanOrEqual(7);
      await page.goto(`${app.url}/plants/${plant.id}`);
      await page.getByRole('link', { name: 'Cut list', exact: true }).tap();
      await page.getByRole('heading', { name: new RegExp(`^${cuts.length} cuts:`) }).waitFor();
      for (const [index, cut] of cuts.entries()) {
        const words = await row(index + 1).textContent();
        expect(words).toContain(`${cut.clockInPhoto}`);
        expect(words).toContain(`${cut.takeOffMm?.toFixed(0)}`);
        expect(words).toContain(cut.stop === 'tip' ? 'Tip stop' : 'Deep stop');
      }
      await row(1).getByRole('button', { name: 'Why, and how sure' }).tap();
      await row(1)
        .getByText(cuts[0]?.why ?? '')
        .waitFor();
      await screen().getByText('A cut cannot be undone', { exact: false }).first().waitFor();
      expect(await overflow()).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'has room for the thumb everywhere on a row',
    async () => {
      const boxes = await row(1)
        .locator('button, label')
        .evaluateAll((all) => all.map((one) => one.getBoundingClientRect().height));
      expect(Math.min(...boxes)).toBeGreaterThanOrEqual(44);
    },
    PATIENCE_MS,
  );

  it(
    'ticks a cut off, takes it back, and ticks it again',
    async () => {
      const count = (await listOf()).cuts.length;
      await row(1).getByRole('button', { name: 'Done', exact: true }).tap();
      await screen().getByText(`1 of ${count} done.`).waitFor();
      await undoOf(page, 'Cut 1 is done.').tap();
      await screen().getByText(`0 of ${count} done.`).waitFor();
      await row(1).getByRole('button', { name: 'Done', exact: true }).tap();
      await expect.poll(async () => (await listOf()).cuts[0]?.state, { timeout: PATIENCE_MS }).toBe('done');
    },
    PATIENCE_MS,
  );

  it(
    'skips one and notes why',
    async () => {
      await row(3).getByRole('button', { name: 'Write a note' }).tap();
      await page.getByLabel('Note on cut 3').fill('Carries the best bud.');
      await row(3).getByRole('button', { name: 'Keep', exact: true }).tap();
      await row(3).getByText('Carries the best bud.').waitFor();
      await row(3).getByRole('button', { name: 'Skip', exact: true }).tap();
      await screen().getByText('1 skipped', { exact: false }).waitFor();
      await expect
        .poll(async () => (await listOf()).cuts[2], { timeout: PATIENCE_MS })
        .toMatchObject({ state: 'skipped', note: 'Carries the best bud.' });
    },
    PATIENCE_MS,
  );

  it(
    'sees before and after change with every cut that is not chosen',
    async () => {
      const chosen = (await listOf()).after;
      const drawn = await outlineAfter();
      await row(2).getByLabel('Chosen').uncheck();
      await screen().getByText('1 not chosen', { exact: false }).waitFor();
      await expect.poll(outlineAfter, { timeout: PATIENCE_MS }).not.toBe(drawn);
      await expect.poll(async () => (await listOf()).after).not.toEqual(chosen);
      const { after } = await listOf();
      await expect
        .poll(() => page.getByTestId('score-roundness').textContent(), { timeout: PATIENCE_MS })
        .toContain(`after ${after?.roundness?.score.toFixed(0)}`);
    },
    PATIENCE_MS,
  );

  it(
    'is told of a change that was not kept, and sees it taken back',
    async () => {
      await page.route('**/cuts/**', (route) =>
        route.fulfill({
          status: 503,
          contentType: 'application/problem+json',
          body: JSON.stringify({
            title: 'Unavailable',
            status: 503,
            detail: 'The store is busy. Try again.',
          }),
        }),
      );
      await row(4).getByRole('button', { name: 'Done', exact: true }).tap();
      await row(4).getByText('The store is busy. Try again.').waitFor();
      await row(4).getByRole('button', { name: 'Done', exact: true, pressed: false }).waitFor();
      await page.unroute('**/cuts/**');
      await expect.poll(() => faults.length).toBe(1);
      expect(faults.splice(0)).toEqual([expect.stringContaining('503')]);
    },
    PATIENCE_MS,
  );

  it(
    'chooses another ball: a width, then back from the show',
    async () => {
      await chooser();
      await page.getByRole('radio', { name: /^A width of my own/ }).check();
      await page.getByRole('button', { name: 'Keep', exact: true }).tap();
      await page.getByText('Give the width in millimetres, for example 300.').waitFor();
      const radiusMm = (await listOf()).ball?.radiusMm ?? 0;
      await page.getByLabel('Width of the ball, mm').fill(String(Math.round(1.9 * radiusMm)));
      await page.getByRole('button', { name: 'Keep', exact: true }).tap();
      await expect.poll(async () => (await listOf()).ball?.way, { timeout: PATIENCE_MS }).toBe('width');
      await screen()
        .getByText((await listOf()).ball?.words ?? '')
        .waitFor();
      await chooser();
      await page.getByRole('radio', { name: /^Back from the show/ }).check();
      await page.getByLabel('Widest on the day, mm').fill('900');
      await page.getByRole('button', { name: 'Keep', exact: true }).tap();
      await page.getByText('Give the day of the show', { exact: false }).waitFor();
      const inTenWeeks = new Date(Date.now() + 70 * 86_400_000).toISOString().slice(0, 10);
      await page.getByLabel('Day of the show').fill(inTenWeeks);
      await page.getByRole('button', { name: 'Keep', exact: true }).tap();
      await expect.poll(async () => (await listOf()).ball?.way, { timeout: PATIENCE_MS }).toBe('show');
      await screen()
        .getByText((await listOf()).ball?.why ?? '')
        .waitFor();
      await chooser();
      await page.getByRole('radio', { name: /^Even up/ }).check();
      await page.getByRole('button', { name: 'Keep', exact: true }).tap();
      await expect.poll(async () => (await listOf()).ball?.way, { timeout: PATIENCE_MS }).toBe('even-up');
    },
    PATIENCE_MS,
  );

  it(
    'finds it all there after a reload',
    async () => {
      await page.reload();
      await row(3).getByText('Carries the best bud.').waitFor();
      await row(1).getByRole('button', { name: 'Done', exact: true, pressed: true }).waitFor();
      await row(3).getByRole('button', { name: 'Skipped', pressed: true }).waitFor();
      await row(2).getByRole('checkbox', { name: 'Chosen', checked: false }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'prints it on one page of A4 or Letter, with the drawn photo',
    async () => {
      for (const format of ['A4', 'Letter'] as const) {
        expect([format, pagesOf(await page.pdf({ format }))]).toEqual([format, 1]);
      }
      await page.emulateMedia({ media: 'print' });
      const printed = page.getByTestId('printed-list');
      const { cuts } = await listOf();
      await expect.poll(() => printed.getByRole('row').count()).toBeGreaterThan(cuts.length);
      expect(await printed.locator('image').count()).toBe(1);
      await screen().waitFor({ state: 'hidden' });
      await page.emulateMedia({ media: 'screen' });
    },
    PATIENCE_MS,
  );

  it(
    'of a plant taken from all round sees the cuts from above',
    async () => {
      const round = await addPlant({ name: 'Landing regal', kind: 'regal', rimMm: 130 });
      for (const turn of [0, 45, 90, 135]) {
        const end = turn === 0 ? '' : `-turn${String(turn).padStart(3, '0')}`;
        await addPhoto(round.id, `window-regal/2026-10-11${end}.jpg`, turn);
      }
      const { cuts, from } = await listOf(await sittingOf(round.id));
      expect(from).toBe('turned');
      await page.goto(`${app.url}/plants/${round.id}/cut-list`);
      await page.getByText('From above', { exact: true }).tap();
      await screen().getByTestId('plan-clock').waitFor();
      await expect.poll(() => screen().getByTestId('plan-mark').count()).toBe(cuts.length);
      expect(await overflow()).toBe(0);
      await row(1).getByRole('button', { name: 'Done', exact: true }).tap();
      await page.getByRole('link', { name: 'Photograph after the work' }).tap();
      await page.getByRole('heading', { name: 'Landing regal, after the work' }).waitFor();
      await page.getByText('Shot 1 of 4').waitFor();
    },
    PATIENCE_MS,
  );

  it('met no fault on the way', () => {
    expect(faults).toEqual([]);
  });
});
