import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Bench } from '../../server/schemas/pages.ts';
import { allScreens } from './all-screens.ts';
import { watchRest } from './at-rest.ts';
import { measuredBench } from './measured-sample.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { movingParts, wordlessPictures } from './what-a-screen-shows.ts';

/**
 * No screen breaks a rule that a program can check: axe-core's rules for the Web Content Accessibility Guidelines 2.2, levels A and AA, and its best
 * practices. The sample bench is walked through at a phone's and a desk's width, in both shades.
 */
const AXE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const WIDTHS = { phone: { width: 390, height: 844 }, desk: { width: 1280, height: 900 } } as const;

/** WCAG 2.2, 1.4.10 Reflow: 320 CSS px is a desk of 1280 at 400 %, 640 the same at 200 % (1.4.4 Resize Text). */
const ZOOMED_WIDTHS_PX = [640, 320];

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

/** How far the page reaches past the window, px. */
function asidePx(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
}

describe.each(Object.keys(WIDTHS) as (keyof typeof WIDTHS)[])('on a %s', (width) => {
  describe.each(Object.keys(allScreens('')))('%s', (name) => {
    let page: Page;
    let atRest: () => Promise<void>;

    beforeAll(async () => {
      const context = await browser.newContext({ viewport: WIDTHS[width], reducedMotion: 'reduce' });
      context.setDefaultTimeout(120_000);
      page = await context.newPage();
      atRest = watchRest(page);
      await page.goto(app.url + allScreens(plantId)[name]);
      await page.getByRole('heading', { level: 1 }).first().waitFor();
      // Charts and pictures are drawn after the first words.
      await atRest();
    });
    afterAll(() => page?.context().close());

    it('breaks no rule, in light and in dark', async () => {
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.emulateMedia({ colorScheme });
        expect({ colorScheme, wrongs: await wrongs(page) }).toEqual({ colorScheme, wrongs: [] });
      }
    });

    it('says in words what each picture shows, and moves nothing', async () => {
      await expect.poll(() => wordlessPictures(page)).toEqual([]);
      await expect.poll(() => movingParts(page)).toEqual([]);
    });

    it.runIf(width === 'desk')('needs no scrolling sideways at twice and four times the size', async () => {
      for (const wide of ZOOMED_WIDTHS_PX) {
        await page.setViewportSize({ width: wide, height: 900 });
        // What hangs on the width is drawn anew.
        await atRest();
        await expect.poll(async () => ({ wide, aside: await asidePx(page) })).toEqual({ wide, aside: 0 });
      }
    });
  });
});
