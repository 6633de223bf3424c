import { readFile } from 'node:fs/promises';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Plant } from '../../server/schemas/plant.ts';
import { watchRest } from './at-rest.ts';
import { asJson, ask, grownPlant } from './grown-plant.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';

const PATIENCE_MS = 300_000;
/** Sides in inches: ISO 216 A4 is 210 × 297 mm, Letter 8.5 × 11 in (ANSI/ASME Y14.1). */
const PAPERS = { A4: [210 / 25.4, 297 / 25.4], Letter: [8.5, 11] } as const;

/** Pages of a PDF as Chromium writes it: the count of its page tree. */
function pagesOf(pdf: Buffer): number {
  return Number(/\/Count (\d+)/.exec(pdf.toString('latin1'))?.[1]);
}

describe('what a grower prints and takes along', () => {
  let app: RunningApp;
  let browser: Browser;
  let page: Page;
  let plant: Plant;
  let atRest: () => Promise<void>;
  const faults: string[] = [];

  beforeAll(async () => {
    app = await startApp('off');
    browser = await openBrowser();
    plant = await grownPlant(
      app.url,
      { name: 'Lantern', kind: 'regal', variety: 'Umber Parade', rimMm: 130, showDay: null },
      [
        { file: 'window-regal/2026-09-06.jpg', day: '2026-09-06' },
        ...[0, 45, 90, 135].map((turnDeg) => ({
          file: `window-regal/2026-10-11${turnDeg === 0 ? '' : `-turn${String(turnDeg).padStart(3, '0')}`}.jpg`,
          day: '2026-10-11',
          turnDeg,
        })),
      ],
    );
    await ask(app.url, `/plants/${plant.id}/turns`, asJson('POST', { day: '2026-09-20', facesLightDeg: 90 }));
    const context = await browser.newContext({ viewport: { width: 1280, height: 900 }, colorScheme: 'dark' });
    context.setDefaultTimeout(60_000);
    page = await context.newPage();
    atRest = watchRest(page);
    page.on('pageerror', (fault) => faults.push(fault.message));
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  const pdfOf = (paper: keyof typeof PAPERS) =>
    page.pdf({ preferCSSPageSize: true, format: paper, printBackground: false });

  it('has the bench card on one page of A4 and of Letter', async () => {
    await page.goto(`${app.url}/plants/${plant.id}`);
    await page.getByRole('link', { name: 'Bench card' }).click();
    const card = page.getByRole('article', { name: 'Bench card of Lantern' });
    await card.getByRole('heading', { name: 'Next dates' }).waitFor();
    await card.getByText('Seen from above, the mark at 6 o’clock.').waitFor({ timeout: PATIENCE_MS });
    await card
      .getByText(/Cuts|No cut is left/)
      .first()
      .waitFor();
    await atRest();
    for (const paper of ['A4', 'Letter'] as const) expect(pagesOf(await pdfOf(paper))).toBe(1);
  });

  it('leaves all screen furniture off the paper, which is white in the dark as well', async () => {
    await page.emulateMedia({ media: 'print' });
    expect(await page.getByRole('navigation', { name: 'Places' }).isVisible()).toBe(false);
    expect(await page.getByRole('button', { name: 'Print the card' }).isVisible()).toBe(false);
    const ink = await page
      .getByRole('article', { name: 'Bench card of Lantern' })
      .evaluate((card) => getComputedStyle(card).color);
    const [red, green, blue] = (ink.match(/\d+/g) ?? []).map(Number) as [number, number, number];
    expect(Math.max(red, green, blue)).toBeLessThan(80);
    await page.emulateMedia({ media: null });
  });

  it('has the cut list on one page', async () => {
    await page.goto(`${app.url}/plants/${plant.id}/cut-list`);
    await page.getByTestId('printed-list').waitFor({ state: 'attached' });
    await atRest();
    for (const paper of ['A4', 'Letter'] as const) expect(pagesOf(await pdfOf(paper))).toBe(1);
  });

  it('has the year on two pages at most', async () => {
    await page.goto(`${app.url}/plants/${plant.id}/year`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    await atRest();
    for (const paper of ['A4', 'Letter'] as const) expect(pagesOf(await pdfOf(paper))).toBeLessThanOrEqual(2);
  });

  it('saves a chart as SVG that stands alone, in light ink, with title and days', async () => {
    await page.goto(`${app.url}/plants/${plant.id}`);
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save this chart (Roundness) as SVG' }).click();
    const file = await saved;
    expect(file.suggestedFilename()).toMatch(/^Lantern-Roundness-\d{4}-\d\d-\d\d\.svg$/);
    const svg = await readFile(await file.path(), 'utf8');
    expect(svg).toContain('Lantern: Roundness');
    expect(svg).toMatch(/11 Oct|Oct 11/);
    expect(svg).toContain('turned on');
    expect(svg).toContain('@font-face');
    expect(svg).not.toMatch(/var\(|class="|https?:\/\/(?!www\.w3\.org)/);
    // The screen is dark: its light ink would not show on white.
    expect(svg).toContain('rgb(36, 18, 42)');
    // Read by another program than the browser that wrote it: the text is XML with one root.
    const other = await browser.newPage();
    await other.setContent(svg);
    expect(await other.locator('svg').first().isVisible()).toBe(true);
    await other.close();
  });

  it('saves the plan from above as PNG, dark on white and twice as fine as the screen', async () => {
    const saved = page.waitForEvent('download');
    await page.getByRole('button', { name: 'Save this chart (Plan from above) as PNG' }).click();
    const { data, info } = await sharp(await (await saved).path())
      .removeAlpha()
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect(info.width).toBeGreaterThan(600);
    expect([...data.subarray(0, 3)]).toEqual([255, 255, 255]);
    expect(data.some((value) => value < 60)).toBe(true);
  });

  it('broke nothing on the way', () => {
    expect(faults).toEqual([]);
  });
});
