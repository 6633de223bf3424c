import type { Browser, BrowserContext, Page, Route } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import { choosePhotos, holdWay, phoneAtPlant, photosOf, shots, untilIt } from './phone-and-plant.ts';
import { type RunningApp, startApp } from './start-app.ts';

const PATIENCE_MS = 180_000;

describe('what goes wrong with a photo', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let plantId: string;

  beforeAll(async () => {
    app = await startApp('off');
    browser = await openBrowser();
  }, PATIENCE_MS);
  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });
  beforeEach(async () => {
    ({ context, page, plantId } = await phoneAtPlant(browser, app.url, PATIENCE_MS / 2));
  });
  afterEach(() => context.close());

  const sheet = () => page.getByRole('dialog');
  const strip = () => page.getByRole('region', { name: 'Photos that wait on this device' });
  const answerWith = (status: number, detail: string) => (route: Route) =>
    route.fulfill({
      status,
      contentType: 'application/problem+json',
      body: JSON.stringify({ type: 'about:blank', title: '', status, detail }),
    });
  /** The photos that the server has of the plant, once they are so many. */
  const arrived = (count: number) =>
    untilIt(
      () => photosOf(app.url, plantId),
      (names) => names.length === count,
    );

  it(
    'the server’s disk is full: said beside the photo, which waits and arrives when there is room',
    async () => {
      const words = 'The disk of Rondure’s machine is full, so nothing of this was kept.';
      const way = await holdWay(page, answerWith(507, words));
      await choosePhotos(page, await shots(1, 11_000));
      await sheet().getByText(new RegExp(words)).waitFor();
      await page.keyboard.press('Escape');
      await strip()
        .getByText(/1 photo waits on this device and goes by itself\. The disk/)
        .waitFor();
      way.hold();
      await strip().getByRole('button', { name: 'Send now' }).click();
      way.open();
      expect(await arrived(1)).toHaveLength(1);
      await strip().waitFor({ state: 'detached' });
    },
    PATIENCE_MS,
  );

  it(
    'the server is away: the photo goes by itself when it is back',
    async () => {
      await page.route('**/photos', (route) => route.abort('connectionrefused'));
      await choosePhotos(page, await shots(1, 12_000));
      await sheet()
        .getByText(/It waits and goes by itself\. The server does not answer/)
        .waitFor();
      await page.unrouteAll();
      expect(await arrived(1)).toEqual(['shot-01.jpg']);
    },
    PATIENCE_MS,
  );

  it(
    'a photo is refused: said beside it, the others go on, and it stays until it is dropped',
    async () => {
      const [good] = await shots(1, 13_000);
      const text = { name: 'notes.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('not a photo at all') };
      await choosePhotos(page, [text, ...(good ? [good] : [])]);
      await sheet()
        .getByText(/This file is text/)
        .waitFor();
      expect(await arrived(1)).toEqual(['shot-01.jpg']);
      await page.reload();
      await strip()
        .getByText(/This file is text/)
        .waitFor();
      expect(await strip().getByRole('button', { name: 'Send now' }).count()).toBe(0);
      await strip().getByRole('button', { name: 'Drop notes.jpg of Far greenhouse' }).click();
      await strip().waitFor({ state: 'detached' });
    },
    PATIENCE_MS,
  );

  it(
    'the plant is gone: said beside the photo, which is not tried for ever and not thrown away',
    async () => {
      let tries = 0;
      page.on('request', (request) => {
        if (request.method() === 'POST' && request.url().endsWith('/photos')) tries += 1;
      });
      const gone = 'There is no such plant. It may have been removed; go back to the bench.';
      await page.route('**/photos', answerWith(404, gone));
      await choosePhotos(page, await shots(1, 14_000));
      await sheet()
        .getByText(/There is no such plant/)
        .waitFor();
      await page.waitForTimeout(4_000);
      expect(tries).toBe(1);
      await page.unrouteAll();
      await sheet().getByRole('button', { name: 'Send again' }).click();
      expect(await arrived(1)).toHaveLength(1);
    },
    PATIENCE_MS,
  );

  it(
    'two pages are open: what one takes in hand stands in the other too',
    async () => {
      const way = await holdWay(context, (route) => route.abort('connectionrefused'));
      const other = await context.newPage();
      await other.goto(app.url);
      await choosePhotos(page, await shots(1, 15_000));
      await other
        .getByText(/1 photo waits on this device/)
        .first()
        .waitFor();
      way.hold();
      await other.getByRole('button', { name: 'Send now' }).click();
      way.open();
      expect(await arrived(1)).toHaveLength(1);
      await page.keyboard.press('Escape');
      await strip().waitFor({ state: 'detached' });
    },
    PATIENCE_MS,
  );

  it(
    'from the bench a photo is one tap from the camera, at 44 px or more, within the thumb’s half of the card',
    async () => {
      await page.goto(app.url);
      const shutter = page.getByLabel('Photograph Far greenhouse').first();
      const target = page.locator(`label[for="${await shutter.getAttribute('id')}"]`);
      await target.scrollIntoViewIfNeeded();
      const box = await target.boundingBox();
      expect(box?.width).toBeGreaterThanOrEqual(44);
      expect(box?.height).toBeGreaterThanOrEqual(44);
      expect((box?.x ?? 0) + (box?.width ?? 0) / 2).toBeGreaterThan(195);
      expect(await shutter.getAttribute('capture')).toBe('environment');
      await shutter.setInputFiles(await shots(1, 16_000));
      await page.getByText(/The photo of Far greenhouse is taken in hand/).waitFor();
      // The name is that of several plants of this test; the photo went to one of them.
      const sent = await untilIt(
        async () => await page.getByRole('region', { name: /wait on this device/ }).count(),
        (count) => count === 0,
      );
      expect(sent).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'on the plant’s page the shutter stands at the thumb wherever the page is',
    async () => {
      const target = page.locator('label', { hasText: /^ ?Photograph$/ });
      await target.waitFor();
      const box = await target.boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(44);
      // The lower third of a 390 × 844 screen, on the right.
      expect(box?.y).toBeGreaterThan((844 * 2) / 3);
      expect((box?.x ?? 0) + (box?.width ?? 0) / 2).toBeGreaterThan(195);
      await page
        .locator('input[capture]')
        .last()
        .setInputFiles(await shots(1, 17_000));
      await sheet()
        .getByText(/Measured: roundness|Kept, not measured|Being measured|Received/)
        .waitFor();
    },
    PATIENCE_MS,
  );
});
