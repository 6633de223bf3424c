import type { Browser, Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';
import type { View } from '../../server/schemas/sitting.ts';
import { ask, grownPlant, LANTERN } from './grown-plant.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { openCorrections } from './open-corrections.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { undoOf } from './undo-of.ts';

const PATIENCE_MS = 180_000;

describe('a grower sets the rim and the axis by hand', () => {
  let app: RunningApp;
  let browser: Browser;
  let page: Page;
  let plant: Plant;
  const faults: string[] = [];

  const view = async () =>
    (await ask<PlantPage>(app.url, `/plants/${plant.id}`)).sittings[0]?.views[0] as View;
  const tool = () => page.getByRole('dialog');
  const handle = (name: string): Locator => tool().getByRole('button', { name, exact: true });
  /** Where a handle is once it lies still. */
  const middleOf = async (one: Locator) => {
    await one.hover({ trial: true });
    const box = await one.boundingBox();
    if (!box) throw new TypeError('Expected a handle on the screen but received none');
    return { x: box.x + box.width / 2, y: box.y + box.height / 2 };
  };
  const answered = async (act: () => Promise<unknown>): Promise<View> => {
    const answer = page.waitForResponse((one) => one.url().endsWith('/rim'));
    await act();
    return (await answer).json();
  };

  beforeAll(async () => {
    app = await startApp('off');
    browser = await openBrowser();
    plant = await grownPlant(app.url, LANTERN, [{ file: 'window-regal/2026-10-18.jpg', day: '2026-10-18' }]);
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
    context.setDefaultTimeout(60_000);
    page = await context.newPage();
    noteFaults(page, faults);
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
  });

  it('drags an end with the mouse, and the measures follow', async () => {
    const before = await view();
    await page.goto(`${app.url}/plants/${plant.id}`);
    await openCorrections(page);
    await page.getByRole('button', { name: 'Set rim and axis' }).click();
    const at = await middleOf(handle('Left end of the rim'));
    const after = await answered(async () => {
      await page.mouse.move(at.x, at.y);
      await page.mouse.down();
      await page.mouse.move(at.x - 30, at.y, { steps: 6 });
      await page.mouse.up();
    });
    const [found, set] = [before.report?.axis, after.report?.axis];
    if (!found || !set || !after.report?.scale || !before.report?.scale) throw new TypeError('No rim');
    expect(set.rimLeftPx[0]).toBeLessThan(found.rimLeftPx[0] - 10);
    expect(set.rimRightPx[0]).toBeCloseTo(found.rimRightPx[0], 0);
    // A rim that reads wider makes a millimetre more px, so fewer mm a px; and the axis goes through its middle.
    expect(after.report.scale.mmPerPx).toBeLessThan(before.report.scale.mmPerPx);
    expect(set.xPx).toBeLessThan(found.xPx);
  });

  it('moves the axis with both ends by keys, ten times as far with Shift', async () => {
    const before = await view();
    await handle('The plant’s axis, with the rim').focus();
    const after = await answered(() => page.keyboard.press('Shift+ArrowRight'));
    const [left, right] = [after.rimByHand?.leftPx, after.rimByHand?.rightPx];
    const [fromLeft, fromRight] = [before.rimByHand?.leftPx, before.rimByHand?.rightPx];
    if (!left || !right || !fromLeft || !fromRight) throw new TypeError('No rim by hand');
    expect(left[0] - fromLeft[0]).toBeGreaterThan(3);
    expect(right[0] - fromRight[0]).toBeCloseTo(left[0] - fromLeft[0], 6);
  });

  it('drags by a finger, with the spot under it shown larger', async () => {
    const before = (await view()).rimByHand?.rightPx[0] as number;
    const at = await middleOf(handle('Right end of the rim'));
    const cdp = await page.context().newCDPSession(page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', x: number) =>
      cdp.send('Input.dispatchTouchEvent', {
        type,
        touchPoints: type === 'touchEnd' ? [] : [{ x, y: at.y }],
      });
    const after = await answered(async () => {
      await touch('touchStart', at.x);
      await touch('touchMove', at.x + 8);
      await touch('touchMove', at.x + 16);
      await expect.poll(() => tool().locator('svg[data-side]').count()).toBe(1);
      await touch('touchEnd', at.x + 16);
    });
    expect(after.rimByHand?.rightPx[0]).toBeGreaterThan(before);
  });

  it('says on the page that it was set by hand, and takes it back with one press', async () => {
    await tool().getByRole('button', { name: 'Done', exact: true }).click();
    const hand = page.getByRole('region', { name: 'Set by hand' });
    await hand.getByText('Rim and axis').waitFor();
    await answered(() => hand.getByRole('button', { name: 'Take the rim as it was found' }).click());
    await hand.waitFor({ state: 'detached' });
    expect((await view()).rimByHand).toBeNull();
    await answered(() => undoOf(page, 'The rim is as it was found.').click());
    expect((await view()).rimByHand).not.toBeNull();
  });

  it('leaves all as it was when cancelled', async () => {
    const before = (await view()).rimByHand;
    await openCorrections(page);
    await page.getByRole('button', { name: 'Set rim and axis' }).click();
    await handle('Left end of the rim').focus();
    await answered(() => page.keyboard.press('ArrowDown'));
    await answered(() => tool().getByRole('button', { name: 'Cancel', exact: true }).click());
    await tool().waitFor({ state: 'detached' });
    expect((await view()).rimByHand).toEqual(before);
  });

  it('broke nothing on the way', () => {
    expect(faults).toEqual([]);
  });
});
