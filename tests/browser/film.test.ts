import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';
import { asJson, ask, grownPlant, LANTERN } from './grown-plant.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';

const PATIENCE_MS = 240_000;
const DAYS = ['2026-09-06', '2026-09-27', '2026-10-18', '2026-11-08'];

describe('weeks of photos as a film', () => {
  let app: RunningApp;
  let browser: Browser;
  let page: Page;
  let plant: Plant;
  const faults: string[] = [];
  const fetched: string[] = [];

  const open = async (options: Parameters<Browser['newContext']>[0] = {}) => {
    // The test answers pictures itself, which it cannot where a service worker asks for them.
    const context = await browser.newContext({ locale: 'en-GB', serviceWorkers: 'block', ...options });
    context.setDefaultTimeout(PATIENCE_MS / 4);
    const opened = await context.newPage();
    noteFaults(opened, faults);
    opened.on('request', (request) => {
      if (request.url().includes('/picture')) fetched.push(request.url());
    });
    return opened;
  };
  const bar = () => page.getByRole('slider', { name: 'Picture' });
  const shownDay = async () => (await bar().getAttribute('aria-valuetext')) ?? '';

  beforeAll(async () => {
    app = await startApp('off');
    browser = await openBrowser();
    plant = await grownPlant(
      app.url,
      LANTERN,
      DAYS.map((day) => ({ file: `window-regal/${day}.jpg`, day })),
    );
    await ask(app.url, `/plants/${plant.id}/stops`, asJson('POST', { day: '2026-10-10', depth: 'tip' }));
    await ask(app.url, `/plants/${plant.id}/turns`, asJson('POST', { day: '2026-10-18', facesLightDeg: 90 }));
    page = await open({ reducedMotion: 'reduce' });
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it('is opened from the film strip and stands still where no motion is wanted', async () => {
    await page.goto(`${app.url}/plants/${plant.id}`);
    await page.getByRole('link', { name: 'Play as a film' }).click();
    await page.getByRole('heading', { name: 'Film', exact: true }).waitFor();
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
    // Longer than the first picture of a film that runs.
    await page.waitForTimeout(1500);
    await page.getByText('Picture 1 of 4').waitFor();
    expect(await shownDay()).toContain('picture 1 of 4');
    expect(await page.getByRole('button', { name: 'Play', exact: true }).isVisible()).toBe(true);
  });

  it('steps, jumps and plays by keys alone', async () => {
    await page.locator('body').press('ArrowRight');
    await expect.poll(shownDay).toContain('picture 2 of 4');
    await page.locator('body').press('End');
    await expect.poll(shownDay).toContain('picture 4 of 4');
    await page.locator('body').press('Home');
    await expect.poll(shownDay).toContain('picture 1 of 4');
    await page.locator('body').press(' ');
    // It runs to its end and stands there, however seldom it is looked at.
    await expect.poll(shownDay).toContain('picture 4 of 4');
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
  });

  it('names what was done, and goes there by a press', async () => {
    await page.getByRole('button', { name: /^Tip stop/ }).click();
    await expect.poll(shownDay).toContain('picture 3 of 4');
    await page.getByText('Tip stop, Turned.').waitFor();
  });

  it('draws ball and outline when asked', async () => {
    const stage = page.getByRole('img', { name: /^Lantern/ });
    expect(await stage.locator('circle').count()).toBe(0);
    await page.getByLabel('Ball', { exact: true }).check();
    await page.getByLabel('Outline', { exact: true }).check();
    await expect.poll(() => stage.locator('circle').count()).toBeGreaterThan(0);
    await expect.poll(() => stage.locator('path').count()).toBeGreaterThan(0);
    await page.getByLabel('Ball', { exact: true }).uncheck();
    await page.getByLabel('Outline', { exact: true }).uncheck();
  });

  it('is saved as a file that moves, and says how far it is', async () => {
    const saved = page.waitForEvent('download', { timeout: PATIENCE_MS });
    await page.getByRole('button', { name: 'Save as WebP' }).click();
    expect((await saved).suggestedFilename()).toBe('Lantern-2026-09-06-to-2026-11-08.webp');
    await page.getByText(/^Saved as Lantern-2026/).waitFor();
  });

  it('plays by itself where motion is welcome', async () => {
    const moving = await open({ reducedMotion: 'no-preference' });
    await moving.goto(`${app.url}/plants/${plant.id}/film`);
    await moving.getByText('Picture 4 of 4').waitFor();
    await moving.context().close();
  });

  it('fetches small pictures a few ahead, not all of sixty sittings', async () => {
    const long = await open({
      reducedMotion: 'reduce',
      viewport: { width: 390, height: 844 },
      // What a service worker asks for, the test could not answer.
      serviceWorkers: 'block',
    });
    await long.route(
      ({ pathname }) => pathname === `/api/plants/${plant.id}`,
      async (route) => {
        const answer = await route.fetch();
        const body = (await answer.json()) as PlantPage;
        const model = body.sittings[0];
        if (!model) throw new TypeError('Expected a sitting but received none');
        const sittings = Array.from({ length: 60 }, (_, week) => ({
          ...model,
          id: `s${week}`,
          day: new Date(Date.UTC(2025, 0, 5) + week * 7 * 86_400_000).toISOString().slice(0, 10),
          views: model.views.map((view) => ({
            ...view,
            id: `v${week}`,
            sittingId: `s${week}`,
            pictureUrl: `/api/views/v${week}/picture`,
          })),
        }));
        await route.fulfill({ response: answer, json: { ...body, sittings, earlier: [] } });
      },
    );
    const small = model800(app.url, plant.id);
    await long.route('**/api/views/v*/picture*', async (route) =>
      route.fulfill({ body: await small, contentType: 'image/jpeg' }),
    );
    fetched.length = 0;
    await long.goto(`${app.url}/plants/${plant.id}/film`);
    await long.getByText('Picture 1 of 60').waitFor();
    await long.waitForTimeout(1200);
    expect(fetched.filter((url) => url.includes('width=800')).length).toBeLessThanOrEqual(7);
    expect(fetched.filter((url) => url.includes('width=1600')).length).toBeLessThanOrEqual(1);
    await long.getByRole('button', { name: 'Play', exact: true }).click();
    // A slow machine may draw twelve and thirteen between two looks.
    await long.getByText(/Picture (1[2-9]|[2-6]\d) of 60/).waitFor({ timeout: PATIENCE_MS });
    expect(fetched.filter((url) => url.includes('width=1600')).length).toBeLessThanOrEqual(1);
    expect(await long.evaluate(() => document.documentElement.scrollWidth - window.innerWidth)).toBe(0);
    await long.unrouteAll({ behavior: 'ignoreErrors' });
    await long.context().close();
  });

  it('says which photo stays out, and why', async () => {
    const { sittings } = await ask<PlantPage>(app.url, `/plants/${plant.id}`);
    await ask(app.url, `/sittings/${sittings[0]?.id}`, asJson('PATCH', { leftOut: 'limp from drought' }));
    await page.reload();
    await page.getByText(/Picture \d of 3\./).waitFor();
    await page.getByText('1 photo left out').click();
    await page.getByText(/its sitting is left out by you/).waitFor();
  });

  it('broke nothing on the way', () => {
    expect(faults).toEqual([]);
  });
});

/** The newest photo of the plant, 800 px wide. */
async function model800(appUrl: string, plantId: string): Promise<Buffer> {
  const { sittings } = await ask<PlantPage>(appUrl, `/plants/${plantId}`);
  const answer = await fetch(`${appUrl}${sittings[0]?.views[0]?.pictureUrl}?width=800`);
  return Buffer.from(await answer.arrayBuffer());
}
