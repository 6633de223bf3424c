import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Stand } from '../../server/schemas/stand.ts';
import { measuredSample } from './measured-sample.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { undoOf } from './undo-of.ts';

const EMPTY = join(import.meta.dirname, '../../sample-images/greenhouse-regal/empty.jpg');
const PATIENCE_MS = 180_000;

describe('a grower sets up the stand', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  const faults: string[] = [];

  const kept = async () => ((await (await fetch(`${app.url}/api/stands`)).json()) as Stand[])[0];
  const next = () => page.getByRole('button', { name: 'Next', exact: true }).click();
  const step = (number: number) => page.getByText(`Step ${number} of 5`).waitFor();

  beforeAll(async () => {
    app = await startApp();
    browser = await openBrowser();
    context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
    // Shorter than the tests’ own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 2);
    page = await context.newPage();
    noteFaults(page, faults);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it(
    'is led there from the bench, and held at a step with a wrong entry',
    async () => {
      await page.goto(app.url);
      await page.getByRole('link', { name: 'Set up the stand' }).click();
      await step(1);
      await page.getByLabel(/Camera to the middle of the pot/).fill('two steps');
      await next();
      await page.getByText('Give the stand a name, for example Shed bench.').waitFor();
      await page.getByText('Give the distance as a number, for example 180 cm.').waitFor();
      await page.getByLabel('Name of the stand').fill('Shed bench');
      await page.getByLabel(/Camera to the middle of the pot/).fill('1,8 m');
      await next();
      await step(2);
    },
    PATIENCE_MS,
  );

  it(
    'leaves it, and finds it at the same step after a reload',
    async () => {
      await page.getByLabel('Dark plain cloth').check();
      await page.getByRole('button', { name: 'Leave for now' }).click();
      await page.getByRole('heading', { name: 'Stands' }).waitFor();
      await page.reload();
      await page.getByText('A set-up was left at step 2 of 5: Shed bench.').waitFor();
      expect(await kept()).toBeUndefined();
      await page.getByRole('link', { name: 'Go on with it' }).click();
      await page.getByRole('radio', { name: 'Dark plain cloth', checked: true }).waitFor();
      await next();
      await step(3);
    },
    PATIENCE_MS,
  );

  it(
    'taps on the drawing where the light comes from',
    async () => {
      await page.getByRole('radio', { name: 'from left' }).tap();
      await next();
      await step(4);
    },
    PATIENCE_MS,
  );

  it(
    'says where the sheet hangs, and is asked how far the pot stands before it',
    async () => {
      await page.getByRole('radio', { name: /^The stand sheet/ }).check();
      await page.getByRole('button', { name: /Keep the stand/ }).click();
      await page.getByText(/Measure from the sheet to the middle of the pot/).waitFor();
      await page.getByLabel(/Middle of the pot before the sheet/).fill('15');
      await page.getByRole('button', { name: /Keep the stand/ }).click();
      await step(5);
      expect(await kept()).toMatchObject({
        name: 'Shed bench',
        backdrop: 'Dark plain cloth',
        cameraDistanceMm: 1800,
        lightSide: 'left',
        scaleFrom: 'sheet',
        sheet: { paper: 'A4', place: 'backdrop', plantInFrontMm: 150 },
      });
    },
    PATIENCE_MS,
  );

  it(
    'sends the empty photo and has it judged at once',
    async () => {
      await page
        .locator('input[type=file]')
        .first()
        .setInputFiles({ name: 'empty.jpg', mimeType: 'image/jpeg', buffer: readFileSync(EMPTY) });
      await page.getByText(/^● It will do\.|^▲ Better take it again\./).waitFor();
      expect((await kept())?.emptyPhoto?.check.brightness).toBe('good');
      await page.getByRole('button', { name: 'Done', exact: true }).click();
      await page.getByRole('heading', { name: 'Shed bench' }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'puts a plant on it, and reads it on the plant’s page',
    async () => {
      const { plantId } = await measuredSample(app.url);
      await page.goto(`${app.url}/plants/${plantId}`);
      await page.getByText('No stand yet').waitFor();
      await page.getByRole('button', { name: 'Choose its stand' }).click();
      await page.getByLabel('Stand', { exact: true }).selectOption({ label: 'Shed bench' });
      await page.getByRole('button', { name: 'Keep', exact: true }).click();
      await page.getByRole('link', { name: 'Shed bench' }).waitFor();
      await page.getByText('light from the left').waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'changes the light later, and only that',
    async () => {
      const before = await kept();
      await page.getByRole('link', { name: 'Shed bench' }).click();
      await page.getByRole('link', { name: 'Change: Light' }).click();
      await page.getByRole('radio', { name: 'from right' }).tap();
      await page.getByRole('button', { name: 'Keep the change' }).click();
      await page.getByText('from the right', { exact: true }).waitFor();
      const after = await kept();
      expect(after).toMatchObject({ lightSide: 'right', cameraDistanceMm: before?.cameraDistanceMm });
      expect(after?.emptyPhoto?.url).toBe(before?.emptyPhoto?.url);
      await page.getByRole('heading', { name: 'How it changed' }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'is asked for a new empty photo when the camera has moved',
    async () => {
      await page.getByRole('link', { name: 'Change: Camera to pot' }).click();
      await page.getByLabel(/Camera to the middle of the pot/).fill('200');
      await page.getByRole('button', { name: 'Keep the change' }).click();
      await step(5);
      expect(await kept()).toMatchObject({ cameraDistanceMm: 2000, emptyPhoto: null });
      await page.getByRole('button', { name: 'Later', exact: true }).click();
    },
    PATIENCE_MS,
  );

  it(
    'puts it away and takes that back',
    async () => {
      await page.getByRole('button', { name: 'Put Shed bench away' }).click();
      await page.getByText('1 stand put away').waitFor();
      await undoOf(page, 'The stand Shed bench is put away.').click();
      await page.getByRole('link', { name: 'Shed bench' }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'prints the sheet alone, at true size, on both papers',
    async () => {
      for (const [paper, width, height] of [
        ['A4', 210, 297],
        ['Letter', 215.9, 279.4],
      ] as const) {
        await page.goto(`${app.url}/stand-sheet?paper=${paper}`);
        const sheet = page.getByRole('img', { name: `The stand sheet on ${paper}` });
        await expect
          .poll(() => sheet.evaluate((img: HTMLImageElement) => img.naturalWidth))
          .toBeGreaterThan(0);
        await page.emulateMedia({ media: 'print' });
        // CSS: 96 px an inch of 25.4 mm. A tenth of a millimetre is finer than a ruler reads.
        const placeMm = async () => {
          const box = await sheet.boundingBox();
          return [box?.x, box?.y, box?.width, box?.height].map((px = Number.NaN) => (px * 25.4) / 96);
        };
        await expect.poll(placeMm).toEqual([0, 0, expect.closeTo(width, 1), expect.closeTo(height, 1)]);
        const pdf = await page.pdf({ preferCSSPageSize: true });
        expect(mediaBoxes(pdf)).toEqual([[expect.closeTo(width, 0), expect.closeTo(height, 0)]]);
        await page.emulateMedia({ media: null });
      }
    },
    PATIENCE_MS,
  );

  it('met no fault on the way', () => {
    expect(faults).toEqual([]);
  });
});

/** Width and height of each page of a PDF, mm. A point is 1/72 inch. */
function mediaBoxes(pdf: Buffer): [number, number][] {
  return [...pdf.toString('latin1').matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)].map((found) => [
    (Number(found[1]) / 72) * 25.4,
    (Number(found[2]) / 72) * 25.4,
  ]);
}
