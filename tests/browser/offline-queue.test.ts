import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openBrowser } from './open-browser.ts';
import {
  addPlant,
  choosePhotos,
  holdWay,
  phoneAtPlant,
  photosOf,
  shots,
  untilIt,
  untilReadyForNoNetwork,
} from './phone-and-plant.ts';
import { type RunningApp, startApp } from './start-app.ts';
import { undoOf } from './undo-of.ts';

const PATIENCE_MS = 180_000;
const COUNT = 10;
const NAMES = Array.from({ length: COUNT }, (_, k) => `shot-${String(k + 1).padStart(2, '0')}.jpg`);

/** Every test sends other photos: the server knows one that it has, whichever plant it came to. */
let seed = 1000;
function tenShots() {
  seed += 100;
  return shots(COUNT, seed);
}

describe('ten photos on a phone whose network is cut', () => {
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
    await untilReadyForNoNetwork(page);
  });

  afterEach(() => context.close());

  const arrived = () =>
    untilIt(
      () => photosOf(app.url, plantId),
      (names) => names.length >= COUNT,
    );
  const waiting = () => page.getByRole('region', { name: 'Photos that wait on this device' });

  it(
    'arrive once each after the network went in the middle and the page was loaded anew',
    async () => {
      let sent = 0;
      // The fifth waits here until the network is gone: on a slow machine the rest would be through before that.
      await page.route('**/photos', async (route) => {
        sent += 1;
        if (sent === 5) await context.setOffline(true);
        if (sent >= 5) return route.abort('internetdisconnected');
        return route.continue();
      });
      await choosePhotos(page, await tenShots());
      await page
        .getByText(/wait on this device and go by themselves/)
        .first()
        .waitFor();
      const before = await photosOf(app.url, plantId);
      expect(before.length).toBeLessThan(COUNT);
      expect(before.length).toBeGreaterThan(0);
      await page.reload().catch(() => undefined);
      await page.unrouteAll({ behavior: 'wait' });
      await context.setOffline(false);
      await page.goto(app.url);
      expect(await arrived()).toEqual(NAMES);
      await waiting().waitFor({ state: 'detached' });
    },
    PATIENCE_MS,
  );

  it(
    'arrive once each when the server took them but its answers were lost',
    async () => {
      let sent = 0;
      await page.route('**/photos', async (route) => {
        sent += 1;
        // The server has it on disk before the line breaks.
        if (sent >= 4 && sent <= 6) await route.fetch();
        if (sent >= 4) return route.abort('connectionreset');
        return route.continue();
      });
      await choosePhotos(page, await tenShots());
      await untilIt(
        async () => sent,
        (count) => count >= 6,
      );
      expect((await photosOf(app.url, plantId)).length).toBeGreaterThan(3);
      await page.unrouteAll({ behavior: 'wait' });
      await page.reload();
      expect(await arrived()).toEqual(NAMES);
      await waiting().waitFor({ state: 'detached' });
      // A photo whose answer was lost is simply in: nobody is told that it is there already.
      expect(await page.getByText(/This photo is already/).count()).toBe(0);
    },
    PATIENCE_MS,
  );

  it(
    'arrive once each when the phone stops for good in the middle and is started again',
    async () => {
      await page.route('**/photos', (route) => route.abort('internetdisconnected'));
      await choosePhotos(page, await tenShots());
      await page
        .getByText(/10 photos wait on this device/)
        .first()
        .waitFor();
      await page.close({ runBeforeUnload: false });
      page = await context.newPage();
      await page.goto(app.url);
      expect(await arrived()).toEqual(NAMES);
    },
    PATIENCE_MS,
  );

  it(
    'are sent by one page only when two are open',
    async () => {
      const posts: string[] = [];
      context.on('requestfinished', (request) => {
        if (request.method() === 'POST' && request.url().endsWith('/photos')) posts.push(request.url());
      });
      await context.setOffline(true);
      await choosePhotos(page, await tenShots());
      await page
        .getByText(/10 photos wait on this device/)
        .first()
        .waitFor();
      const other = await context.newPage();
      await other.goto(app.url);
      await other.getByText(/10 photos on the way|10 photos wait on this device/).waitFor();
      posts.length = 0;
      // Both hear at once that the network is back.
      await context.setOffline(false);
      expect(await arrived()).toEqual(NAMES);
      await other.getByRole('region', { name: /wait on this device/ }).waitFor({ state: 'detached' });
      await waiting().waitFor({ state: 'detached' });
      expect(posts).toHaveLength(COUNT);
    },
    PATIENCE_MS,
  );

  it(
    'stand in the strip with plant, picture and since when, and can be dropped and taken back',
    async () => {
      await context.setOffline(true);
      await choosePhotos(page, (await tenShots()).slice(0, 2));
      await page
        .getByText(/2 photos wait on this device/)
        .first()
        .waitFor();
      await page.keyboard.press('Escape');
      const strip = waiting();
      await expect.poll(() => strip.getByText('Far greenhouse').count()).toBe(2);
      await expect.poll(() => strip.getByText(/^Since .*\d\d:\d\d/).count()).toBe(2);
      await strip.getByRole('img', { name: 'shot-01.jpg' }).waitFor();
      await strip.getByRole('button', { name: /Drop shot-01/ }).click();
      await page.getByText('The photo shot-01.jpg is dropped.').waitFor();
      await expect.poll(() => strip.getByText('Far greenhouse').count()).toBe(1);
      await undoOf(page, 'The photo shot-01.jpg is dropped.').click();
      await page.getByText('Taken back.').waitFor();
      const way = await holdWay(page, (route) => route.abort('internetdisconnected'));
      way.hold();
      await context.setOffline(false);
      await strip.getByRole('button', { name: 'Send now' }).click();
      way.open();
      const names = await untilIt(
        () => photosOf(app.url, plantId),
        (all) => all.length === 2,
      );
      expect(names).toEqual(['shot-01.jpg', 'shot-02.jpg']);
    },
    PATIENCE_MS,
  );
});

describe('a browser that keeps nothing', () => {
  it(
    'says so, holds the photos in the page, and asks before the page is closed',
    async () => {
      const app = await startApp('off');
      const browser = await openBrowser();
      try {
        const page = await browser.newPage({ viewport: { width: 390, height: 844 } });
        page.setDefaultTimeout(PATIENCE_MS / 3);
        await page.addInitScript(() => {
          IDBFactory.prototype.open = () => {
            throw new DOMException('refused', 'SecurityError');
          };
        });
        const { id } = await addPlant(app.url, 'Private window');
        await page.goto(`${app.url}/plants/${id}`);
        const way = await holdWay(page, (route) => route.abort('internetdisconnected'));
        await choosePhotos(page, await shots(2, 5000));
        await page
          .getByText(/This browser keeps nothing for this page/)
          .first()
          .waitFor();
        let asked = '';
        page.on('dialog', (dialog) => {
          asked = dialog.type();
          void dialog.dismiss();
        });
        // A browser asks only on a page that was touched.
        await page.mouse.click(5, 5);
        await page.goto(app.url).catch(() => undefined);
        await expect.poll(() => asked).toBe('beforeunload');
        way.hold();
        await page.getByRole('button', { name: 'Send now' }).first().click();
        way.open();
        const names = await untilIt(
          () => photosOf(app.url, id),
          (all) => all.length === 2,
        );
        expect(names).toEqual(['shot-01.jpg', 'shot-02.jpg']);
      } finally {
        await browser.close();
        await app.stop();
      }
    },
    PATIENCE_MS,
  );
});
