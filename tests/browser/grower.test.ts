import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';

const SAMPLES = join(import.meta.dirname, '../../sample-images');
const PHOTO = join(SAMPLES, 'window-regal/2026-11-15.jpg');

/** Measuring shares the machine with the sample bench that is being measured at the same time. */
const PATIENCE_MS = 180_000;

/** A sample plant's photo stored anew: a photo that the store already holds would not be kept twice. */
function anotherShot(): Promise<Buffer> {
  return sharp(readFileSync(PHOTO)).keepExif().jpeg({ quality: 90 }).toBuffer();
}

describe('a grower', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  const faults: string[] = [];

  beforeAll(async () => {
    app = await startApp();
    browser = await openBrowser();
    context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      timezoneId: 'Pacific/Auckland',
    });
    // Shorter than the tests’ own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 2);
    page = await context.newPage();
    noteFaults(page, faults);
  });

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it(
    'finds the sample bench laid out and being measured',
    async () => {
      await page.goto(app.url);
      await page.getByText('Sample', { exact: true }).first().waitFor();
      await expect.poll(() => page.getByRole('article').count()).toBeGreaterThanOrEqual(4);
      await page
        .getByText(/Roundness/i)
        .first()
        .waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'adds a plant and is led to its first photo',
    async () => {
      await page.getByRole('link', { name: 'Add a plant' }).first().click();
      await page.getByLabel(/^Name/).fill('Kitchen window');
      await page.getByLabel(/Pot rim/).fill('130');
      await page.getByRole('button', { name: /Add it/ }).click();
      await page.getByRole('dialog', { name: /Photos of Kitchen window/ }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'drops a photo in and watches it being measured',
    async () => {
      const photos = page.getByRole('dialog', { name: /Photos of Kitchen window/ });
      await photos
        .locator('input[type=file][multiple]')
        .setInputFiles({ name: 'kitchen.jpg', mimeType: 'image/jpeg', buffer: await anotherShot() });
      await photos.getByText(/Measured: roundness \d+/).waitFor();
      await photos.getByRole('button', { name: 'Done', exact: true }).click();
      await photos.waitFor({ state: 'detached' });
    },
    PATIENCE_MS,
  );

  it(
    'sees the ball on the photo and reads the advice',
    async () => {
      await page.getByRole('heading', { level: 1, name: 'Kitchen window' }).waitFor();
      const drawn = page.locator('svg circle');
      await drawn.first().waitFor();
      await page.getByRole('heading', { name: /What to do/i }).waitFor();
      await page
        .getByText(/Symmetry/)
        .first()
        .waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'finds it all there after a reload',
    async () => {
      const address = page.url();
      await page.goto(address);
      await page.getByRole('heading', { level: 1, name: 'Kitchen window' }).waitFor();
      await page.locator('svg circle').first().waitFor();
      await page.goto(app.url);
      await page.getByRole('article').getByRole('link', { name: 'Kitchen window' }).waitFor();
    },
    PATIENCE_MS,
  );

  it('met no fault on the way', () => {
    expect(faults).toEqual([]);
  });
});
