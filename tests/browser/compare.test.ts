import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Plant } from '../../server/schemas/plant.ts';
import { asJson, ask, grownPlant, LANTERN } from './grown-plant.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';

const PATIENCE_MS = 240_000;
const DAYS = ['2026-09-06', '2026-10-04', '2026-11-08'];

describe('two photos compared', () => {
  let app: RunningApp;
  let browser: Browser;
  let page: Page;
  let plant: Plant;
  const faults: string[] = [];

  const sheet = () => page.getByRole('dialog', { name: 'Two photos compared' });
  const chosen = async () =>
    Promise.all(
      ['Below (full line)', 'On top (broken line)'].map((name) =>
        sheet()
          .getByLabel(name)
          .evaluate((select) => (select as HTMLSelectElement).selectedOptions[0]?.text ?? ''),
      ),
    );

  beforeAll(async () => {
    app = await startApp('off');
    browser = await openBrowser();
    plant = await grownPlant(
      app.url,
      LANTERN,
      DAYS.map((day) => ({ file: `window-regal/${day}.jpg`, day })),
    );
    await ask(app.url, `/plants/${plant.id}/stops`, asJson('POST', { day: '2026-09-10', depth: 'tip' }));
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, locale: 'en-GB' });
    context.setDefaultTimeout(60_000);
    page = await context.newPage();
    noteFaults(page, faults);
    await page.goto(`${app.url}/plants/${plant.id}`);
    await page.getByRole('button', { name: 'Compare two photos' }).click();
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it('begins with the newest and the one before', async () => {
    await expect.poll(chosen).toEqual(['Sun 8 Nov', 'Sun 4 Oct']);
  });

  it('chooses the pair since the last stop with one tap', async () => {
    await sheet().getByRole('button', { name: 'Since the last stop' }).click();
    await expect.poll(chosen).toEqual(['Sun 8 Nov', 'Sun 6 Sept']);
  });

  it('draws one across the other as far as the slider says, by keys', async () => {
    const slider = sheet().getByRole('slider');
    const edge = () => sheet().locator('clipPath rect').first().getAttribute('width').then(Number);
    await slider.focus();
    const half = await edge();
    await page.keyboard.press('ArrowRight');
    await expect.poll(edge).toBeCloseTo(half * 1.1, 1);
    await page.keyboard.press('Home');
    await expect.poll(edge).toBe(0);
  });

  it('mixes the two as clear as the slider says', async () => {
    await sheet().getByText('See through').click();
    await sheet().getByRole('slider', { name: 'How clear the top one is' }).focus();
    await page.keyboard.press('End');
    await expect.poll(() => sheet().locator('image[opacity="1"]').count()).toBe(1);
    await page.keyboard.press('Home');
    await expect.poll(() => sheet().locator('image[opacity="0"]').count()).toBe(1);
  });

  it('puts them side by side, in one window of the stand', async () => {
    await sheet().getByText('Side by side').click();
    const boxes = () =>
      sheet()
        .locator('figure svg')
        .evaluateAll((all) => all.map((one) => one.getAttribute('viewBox')));
    await expect.poll(async () => (await boxes()).length).toBe(2);
    const [one, other] = await boxes();
    expect(one).toBe(other);
  });

  it('says what changed, with plus-minus and in words', async () => {
    const row = sheet().getByRole('row', { name: /^Size/ });
    expect(await row.textContent()).toMatch(/\d+ ±\d.*\d+ ±\d.*\+\d+ mm/s);
    expect(
      await sheet()
        .getByRole('row', { name: /^Roundness/ })
        .textContent(),
    ).toMatch(/no change|better|worse/);
  });

  it('broke nothing on the way, and fits the phone', async () => {
    expect(faults).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
  });
});
