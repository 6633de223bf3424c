import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import type { ServedHome } from './start-on-day.ts';
import { ALL_TASKS } from './tasks/all-tasks.ts';
import { COMBINATIONS, type Combination, combinationName, openCombination } from './tasks/combination.ts';
import { openPlant } from './tasks/finding.ts';
import { pressTabTo, unseenFocus } from './tasks/keyboard.ts';
import { layBench, setOut } from './tasks/sample-bench.ts';

/** Other tests share the machine. */
const PATIENCE_MS = 300_000;
const MEASURING_MS = 600_000;

/** Each task once, on the four combinations in turn: `npm run screens` does all of them on each. */
const DEALT = ALL_TASKS.map((task, at) => {
  const combination = COMBINATIONS[at % COMBINATIONS.length] as Combination;
  return { task, combination, title: task.title, on: combinationName(combination) };
});

describe('tasks of a grower', () => {
  let browser: Browser;
  let served: ServedHome;
  let home: string;

  beforeAll(async () => {
    home = mkdtempSync(join(tmpdir(), 'rondure-browser-'));
    [browser, served] = await Promise.all([openBrowser(), layBench(home)]);
  }, MEASURING_MS);

  afterAll(async () => {
    await browser?.close();
    await served?.stop();
    rmSync(home, { recursive: true, force: true });
  });

  it.each(DEALT)(
    '$title ($on)',
    async ({ task, combination }) => {
      await setOut(served.url, task.bench === 'sample plants');
      const context = await openCombination(browser, combination);
      context.setDefaultTimeout(PATIENCE_MS / 3);
      const page = await context.newPage();
      const faults: string[] = [];
      noteFaults(page, faults);
      const steps: string[] = [];
      const shot = async (step: string) => {
        steps.push(step);
        const asidePx = () => page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
        await expect.poll(async () => ({ step, asidePx: await asidePx() })).toEqual({ step, asidePx: 0 });
      };
      await task.run({ page, appUrl: served.url, shot });
      expect(steps.length).toBeGreaterThanOrEqual(4);
      expect(new Set(steps).size).toBe(steps.length);
      expect(faults).toEqual([]);
      await context.close();
    },
    PATIENCE_MS,
  );

  it(
    'from the bench to the advice, a turn in the log and back by keys alone, the focus always in sight',
    async () => {
      await setOut(served.url, true);
      const context = await openCombination(browser, { device: 'desk', shade: 'light' });
      context.setDefaultTimeout(PATIENCE_MS / 3);
      const page = await context.newPage();
      await page.goto(served.url);
      await page.getByRole('article').first().waitFor();
      const plant = page.getByRole('article').getByRole('link', { name: 'Window regal', exact: true });
      const light = page.getByRole('region', { name: 'Light and turning' });
      const unseen: string[] = [];
      const reach = async (name: string, target: typeof plant) =>
        unseen.push(...(await pressTabTo(page, target, name)));

      await reach('the plant', plant);
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { level: 1, name: 'Window regal' }).waitFor();
      // The newest photo: what is drawn on it is told by a key.
      const photo = page.getByRole('region', { name: 'Photo', exact: true });
      await reach('a mark on the photo', photo.locator('svg [role=button]').first());
      await page.keyboard.press('Enter');
      await photo.getByText('Tap a line, mark or hatched zone').waitFor({ state: 'detached' });
      // The advice stands between photo and light, in the order of the page.
      const other = light.getByRole('button', { name: 'Another turn, or another day' });
      await reach('the turn', light.getByRole('button', { name: /^Turned .* today$/ }).first());
      await page.getByRole('heading', { name: 'What to do' }).waitFor();
      await page.keyboard.press('Space');
      await light.getByText(/faces the light since today\.$/).waitFor();
      // A dialog takes the focus, keeps it while it is open and hands it back.
      await reach('another turn', other);
      await page.keyboard.press('Enter');
      const sheet = page.getByRole('dialog', { name: 'Write down a turn' });
      await sheet.waitFor();
      for (let press = 0; press < 25; press++) {
        await page.keyboard.press('Tab');
        // Past its last field the focus is led back to its first a moment after the key.
        await expect
          .poll(() => sheet.evaluate((dialog) => dialog.contains(document.activeElement)))
          .toBe(true);
        unseen.push(...(await unseenFocus(page)));
      }
      await page.keyboard.press('Escape');
      await sheet.waitFor({ state: 'detached' });
      await expect.poll(() => other.evaluate((one) => one === document.activeElement)).toBe(true);
      // On to the end of the page and round to its head: nothing on the way holds the focus.
      await reach('the way back', page.getByRole('link', { name: 'Rondure, to the bench' }));
      await page.keyboard.press('Enter');
      await page.getByRole('article').first().waitFor();
      expect([...new Set(unseen)]).toEqual([]);
      await context.close();
    },
    PATIENCE_MS,
  );

  it('plays no film by itself and turns nothing where no motion is wanted', async () => {
    const context = await openCombination(browser, { device: 'phone', shade: 'light' });
    context.setDefaultTimeout(PATIENCE_MS / 3);
    const page = await context.newPage();
    await openPlant(page, served.url, 'Window regal');
    await page.getByRole('link', { name: 'Play as a film' }).click();
    await page.getByText('Picture 1 of 5').waitFor();
    await page.getByRole('button', { name: 'Play', exact: true }).waitFor();
    await page.waitForTimeout(1000);
    expect(await page.getByText('Picture 1 of 5').isVisible()).toBe(true);
    await context.close();
  });
});
