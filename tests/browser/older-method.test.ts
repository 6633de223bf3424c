import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { oldStore, turnstile } from '../server/fixtures/old-store.ts';
import { openBench } from '../server/fixtures/open-bench.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';

const WEB = join(import.meta.dirname, '../../dist/web');

let browser: Browser;
let page: Page;
const faults: string[] = [];

beforeAll(async () => {
  browser = await openBrowser();
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  context.setDefaultTimeout(60_000);
  page = await context.newPage();
  noteFaults(page, faults);
}, 120_000);
afterAll(() => browser?.close());

describe('photos measured by an older method', () => {
  it('are named under Keeping, where measuring them anew is watched, stopped and gone on with', async () => {
    const store = await oldStore(3);
    const gate = turnstile();
    const bench = await openBench({ homePath: store.homePath, measure: gate.measure, webFolder: WEB });
    await page.goto(`${bench.url}/plants/${store.plantId}`);
    const older = page.getByText(/^Measured by an older method\. The numbers stand/);
    await older.first().waitFor({ state: 'attached' });

    await page.goto(`${bench.url}/keeping`);
    const part = page.getByRole('region', { name: 'Measured by an older method' });
    await part.getByText('Being measured anew: photos 0 of 3').waitFor();
    await gate.letOne();
    await part.getByText('Being measured anew: photos 1 of 3').waitFor();
    await part.getByRole('button', { name: 'Stop measuring anew' }).click();
    await part.getByRole('button', { name: 'Go on measuring anew' }).waitFor();
    // The one under way comes to its end, and none after it.
    gate.letAll();
    await bench.services.queue.whenIdle();
    await page.reload();
    await part.getByText('Stopped: photos 2 of 3').waitFor();
    await part.getByRole('button', { name: 'Go on measuring anew' }).click();
    await part.waitFor({ state: 'detached' });
    await page.goto(`${bench.url}/plants/${store.plantId}`);
    await page.getByRole('heading', { level: 1 }).waitFor();
    expect(await older.count()).toBe(0);
    expect(faults).toEqual([]);
  }, 300_000);
});
