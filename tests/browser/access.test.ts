import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from '../../server/schemas/pages.ts';
import { measuredBench } from './measured-sample.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';

/**
 * No screen breaks a rule that a program can check: axe-core's rules for the Web Content Accessibility Guidelines 2.2, levels A and AA, and its best
 * practices. The sample bench is walked through at a phone's and a desk's width, in both shades.
 */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const WIDTHS = { phone: { width: 390, height: 844 }, desk: { width: 1280, height: 900 } } as const;

/** Charts and pictures are drawn after the first words. */
const SETTLED_MS = 1500;

let app: RunningApp;
let browser: Browser;
let plantId: string;

beforeAll(async () => {
  [app, browser] = await Promise.all([startApp(), openBrowser()]);
  const { plants } = await measuredBench(app.url);
  plantId = (plants[0] as Bench['plants'][number]).plant.id;
}, 600_000);
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});

const SCREENS: Readonly<Record<string, () => string>> = {
  bench: () => '/',
  plant: () => `/plants/${plantId}`,
  'cut list': () => `/plants/${plantId}/cut-list`,
  'bench card': () => `/plants/${plantId}/card`,
  film: () => `/plants/${plantId}/film`,
  year: () => `/plants/${plantId}/year`,
  'turned photos': () => `/plants/${plantId}/turned`,
  'add a plant': () => '/plants/new',
  shows: () => '/shows',
  calendar: () => '/calendar',
  stands: () => '/stands',
  'set up a stand': () => '/stands/new',
  'stand sheet': () => '/stand-sheet',
  about: () => '/about',
};

/** What axe finds wrong, a line each. */
async function wrongs(page: Page): Promise<string[]> {
  await page.evaluate(AXE);
  const { violations } = await page.evaluate<AxeResults>(
    'axe.run(document, { resultTypes: ["violations"] })',
  );
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary}`),
  );
}

describe.each(Object.keys(WIDTHS) as (keyof typeof WIDTHS)[])('on a %s', (width) => {
  it.each(Object.keys(SCREENS))('%s breaks no rule, in light and in dark', async (name) => {
    const context = await browser.newContext({ viewport: WIDTHS[width], reducedMotion: 'reduce' });
    const page = await context.newPage();
    await page.goto(app.url + (SCREENS[name] as () => string)());
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    // Not networkidle: the stream of events never rests.
    await page.waitForTimeout(SETTLED_MS);
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme });
      expect({ colorScheme, wrongs: await wrongs(page) }).toEqual({ colorScheme, wrongs: [] });
    }
    await context.close();
  });
});
