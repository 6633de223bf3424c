import type { Browser, BrowserContext, CDPSession, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { View } from '../../server/schemas/sitting.ts';
import { contains } from '../../web/src/mend/zone-dabs.ts';
import { measuredSample } from './measured-sample.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { openCorrections } from './open-corrections.ts';
import { paintByFinger, paintByMouse, pinchOpen } from './photo-places.ts';
import { type RunningApp, startApp } from './start-app.ts';

/** The sample bench is being measured at the same time. */
const PATIENCE_MS = 180_000;

describe('a grower mends the outline', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let cdp: CDPSession;
  let tool: Locator;
  let stage: Locator;
  let plantId: string;
  let opened: View;
  /** Answers of the server after each change, newest last. */
  const answers: View[] = [];
  const faults: string[] = [];

  const newest = () => answers.at(-1) ?? opened;
  const drawnOutline = () => page.getByTestId('outline').first().getAttribute('d');

  /** Does something that sends strokes and waits until its answer is drawn. */
  async function answered(change: () => Promise<unknown>): Promise<View> {
    const before = await drawnOutline();
    const answer = page.waitForResponse((one) => one.url().endsWith('/strokes'));
    await change();
    const view: View = await (await answer).json();
    answers.push(view);
    await expect.poll(drawnOutline).not.toBe(before);
    return view;
  }

  beforeAll(async () => {
    app = await startApp();
    browser = await openBrowser();
    context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
    // Shorter than the tests’ own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 2);
    page = await context.newPage();
    cdp = await context.newCDPSession(page);
    noteFaults(page, faults);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it(
    'opens the tool on a measured photo, with the focus on the photo',
    async () => {
      ({ view: opened, plantId } = await measuredSample(app.url));
      await page.goto(`${app.url}/plants/${plantId}`);
      await openCorrections(page);
      await page.getByRole('button', { name: 'Mend the outline' }).click();
      tool = page.getByRole('dialog', { name: 'Mend the outline' });
      stage = tool.getByRole('application', { name: /The photo/ });
      await stage.waitFor();
      await page.getByTestId('outline').first().waitFor();
      await expect.poll(() => stage.evaluate((element) => element === document.activeElement)).toBe(true);
      expect(opened.strokes).toEqual([]);
    },
    PATIENCE_MS,
  );

  /** The photo as the server keeps it. */
  async function keptView(): Promise<View | undefined> {
    const kept = (await (await fetch(`${app.url}/api/plants/${plantId}`)).json()) as PlantPage;
    return kept.sittings.flatMap(({ views }) => views).find(({ id }) => id === opened.id);
  }

  it(
    'paints with the mouse what is to go, and it goes',
    async () => {
      const [x, y] = leftEdge(opened);
      await tool.getByRole('button', { name: 'Remove', exact: true }).click();
      const view = await answered(() =>
        paintByMouse(page, stage, [
          [x - 20, y],
          [x + 60, y],
        ]),
      );
      expect(view.strokes.map(({ kind }) => kind)).toEqual(['remove']);
      expect(contains(opened.outlinePx, [x + 30, y])).toBe(true);
      expect(contains(view.outlinePx, [x + 30, y])).toBe(false);
    },
    PATIENCE_MS,
  );

  it(
    'paints with a finger what was left out, and it is kept',
    async () => {
      const [x, y] = topEdge(newest());
      await tool.getByRole('button', { name: 'Keep', exact: true }).click();
      const view = await answered(() =>
        paintByFinger(cdp, stage, [
          [x, y + 40],
          [x, y + 10],
          [x, y - 20],
          [x, y - 50],
        ]),
      );
      expect(view.strokes.map(({ kind }) => kind)).toEqual(['remove', 'keep']);
      expect(contains(opened.outlinePx, [x, y - 40])).toBe(false);
      expect(contains(view.outlinePx, [x, y - 40])).toBe(true);
    },
    PATIENCE_MS,
  );

  it(
    'looks closer with two fingers, and that leaves no stroke',
    async () => {
      const before = await stage.locator('svg').first().getAttribute('viewBox');
      await pinchOpen(cdp, stage, middle(opened));
      await expect.poll(() => stage.locator('svg').first().getAttribute('viewBox')).not.toBe(before);
      await expect.poll(() => stage.locator('svg').first().locator('[data-kind]').count()).toBe(2);
    },
    PATIENCE_MS,
  );

  it(
    'paints by keys alone',
    async () => {
      await stage.focus();
      await page.keyboard.press('r');
      await page.keyboard.press('ArrowRight');
      await page.getByTestId('crosshair').waitFor();
      await page.keyboard.press('Space');
      const view = await answered(async () => {
        // The crosshair says where it is: on until it has left the plant.
        const outside = page.getByText(/\d+ across, \d+ down, outside the outline/);
        for (let step = 0; step < 40 && !(await outside.isVisible()); step++) {
          await page.keyboard.press('Shift+ArrowRight');
        }
        await page.keyboard.press('Space');
      });
      expect(view.strokes).toHaveLength(3);
      expect(view.strokes[2]?.pointsPx.length).toBeGreaterThan(3);
      await page.getByText(/^Outline about \d+ % sure, roundness \d+/).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'undoes and redoes, by button and by key, each step as it was',
    async () => {
      const [, two, three] = answers;
      const undone = await answered(() => tool.getByRole('button', { name: 'Undo', exact: true }).click());
      expect(undone.strokes).toHaveLength(2);
      expect(undone.outlinePx).toEqual(two?.outlinePx);
      const redone = await answered(() => page.keyboard.press('Control+y'));
      expect(redone.strokes).toHaveLength(3);
      expect(redone.outlinePx).toEqual(three?.outlinePx);
      await answered(() => page.keyboard.press('Control+z'));
      await answered(() => page.keyboard.press('Control+Shift+Z'));
      expect(newest().strokes).toHaveLength(3);
    },
    PATIENCE_MS,
  );

  it(
    'is done, and the outline counts as right',
    async () => {
      await tool.getByRole('button', { name: 'Done', exact: true }).click();
      await stage.waitFor({ state: 'detached' });
      await page.getByRole('button', { name: 'The outline is right', exact: true, pressed: true }).waitFor();
    },
    PATIENCE_MS,
  );

  it(
    'finds strokes and outline there after a reload',
    async () => {
      await page.reload();
      await openCorrections(page);
      await page.getByRole('button', { name: 'The outline is right', exact: true, pressed: true }).waitFor();
      await page.getByRole('button', { name: 'Mend the outline' }).click();
      const traces = stage.locator('svg').first().locator('[data-kind]');
      await expect.poll(() => traces.count()).toBe(3);
      const view = await keptView();
      expect(view?.strokes).toEqual(newest().strokes);
      expect(view?.outlinePx).toEqual(newest().outlinePx);
    },
    PATIENCE_MS,
  );

  it(
    'cancels a second thought and has the strokes as they were on opening',
    async () => {
      await answered(() => tool.getByRole('button', { name: 'Clear all' }).click());
      expect(newest().strokes).toEqual([]);
      await tool.getByRole('button', { name: 'Cancel', exact: true }).click();
      await stage.waitFor({ state: 'detached' });
      const view = await keptView();
      expect(view?.strokes).toHaveLength(3);
      expect(view?.acceptedOutline).toBe(true);
    },
    PATIENCE_MS,
  );

  it('met no fault on the way', () => {
    expect(faults).toEqual([]);
  });
});

type Place = readonly [number, number];

function middle({ report }: View): Place {
  return report?.ball?.centrePx ?? [0, 0];
}

/** The outline's leftmost point at about the ball's middle height. */
function leftEdge(view: View): Place {
  const [, y] = middle(view);
  return nearest(
    view.outlinePx.filter((point) => Math.abs(point[1] - y) < 40),
    0,
  );
}

function topEdge(view: View): Place {
  return nearest(view.outlinePx, 1);
}

function nearest(points: readonly Place[], axis: 0 | 1): Place {
  const [first, ...rest] = points;
  if (!first) throw new TypeError('Expected an outline but received none');
  return rest.reduce((least, point) => (point[axis] < least[axis] ? point : least), first);
}
