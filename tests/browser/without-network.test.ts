import { cpSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from 'vitest';
import { openBench, temporaryFolder } from '../server/fixtures/open-bench.ts';
import { openBrowser } from './open-browser.ts';
import { addPlant, choosePhotos, shots, untilIt } from './phone-and-plant.ts';
import { type RunningApp, startApp } from './start-app.ts';

const PATIENCE_MS = 180_000;
const BUILT = join(import.meta.dirname, '../../dist/web');

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
}, PATIENCE_MS);
afterAll(() => browser?.close());

/** A page whose service worker has the whole shell. */
async function openHeld(url: string): Promise<Page> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  context.setDefaultTimeout(PATIENCE_MS / 2);
  onTestFinished(() => context.close());
  const page = await context.newPage();
  await page.goto(url);
  await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  return page;
}

/** The addresses whose last answers are on the device. */
const keptPaths = (page: Page) =>
  page.evaluate(async () => {
    // Opened before the app has made it, it would be made empty.
    if (!(await indexedDB.databases()).some(({ name }) => name === 'rondure')) return [];
    const settled = <Value>(asked: IDBRequest<Value>) =>
      new Promise<Value>((resolve, reject) => {
        asked.onsuccess = () => resolve(asked.result);
        asked.onerror = () => reject(asked.error);
      });
    const database = await settled(indexedDB.open('rondure'));
    const paths = await settled(database.transaction('answers').objectStore('answers').getAllKeys());
    database.close();
    return paths.map(String);
  });

const shells = (page: Page) =>
  page.evaluate(async () => (await caches.keys()).filter((name) => name.startsWith('rondure-shell-')));

describe('the app without its server', () => {
  let app: RunningApp | null = null;
  afterAll(() => app?.stop());

  it(
    'opens with the bench and the plants looked at last, says of when they are, and takes photos in hand',
    async () => {
      app = await startApp('off');
      const { id } = await addPlant(app.url, 'Far greenhouse');
      const other = await addPlant(app.url, 'Never looked at');
      const page = await openHeld(app.url);
      await page.getByRole('article').getByRole('link', { name: 'Far greenhouse' }).click();
      await page.getByRole('heading', { name: 'Far greenhouse' }).waitFor();
      // What was read last is written down a moment later.
      await expect.poll(() => keptPaths(page)).toEqual(expect.arrayContaining(['/bench', '/stands']));
      await expect.poll(() => keptPaths(page)).toContainEqual(expect.stringContaining(id));
      const { url } = app;
      await app.stop();
      app = null;
      await page.goto(url);
      await page.getByText(/As of .*\d\d:\d\d.*, the server is away/).waitFor();
      await page.getByRole('article').getByRole('link', { name: 'Far greenhouse' }).click();
      await page.getByText(/As of .*\d\d:\d\d.*, the server is away/).waitFor();
      await choosePhotos(page, await shots(1, 9000));
      await page
        .getByText(/1 photo waits on this device/)
        .first()
        .waitFor();
      // A fresh page finds plant and photo again, still without a server.
      await page.goto(`${url}/plants/${id}`);
      await page.getByRole('img', { name: 'shot-01.jpg' }).waitFor();
      // Of a plant that was never looked at nothing is known, and nothing is made up.
      await page.goto(`${url}/plants/${other.id}`);
      await page.getByText(/Rondure’s server does not answer/).waitFor();
    },
    PATIENCE_MS,
  );
});

describe('a new build of the app', () => {
  it(
    'is taken with the next opening, whole, and the old one is swept away',
    async () => {
      const webFolder = join(temporaryFolder(), 'web');
      cpSync(BUILT, webFolder, { recursive: true });
      const { url } = await openBench({ webFolder });
      const page = await openHeld(url);
      const [first] = await shells(page);
      expect(first).toBeDefined();
      await page.goto(url);
      expect(await page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);

      // As a build leaves it: another page, other files, another name of the whole.
      const read = (file: string) => readFileSync(join(webFolder, file), 'utf8');
      writeFileSync(
        join(webFolder, 'index.html'),
        read('index.html').replace('<title>Rondure', '<title>Newer'),
      );
      writeFileSync(
        join(webFolder, 'worker.js'),
        read('worker.js').replace(/"version":"\w+"/, '"version":"newer"'),
      );

      // While a second page is open both stay with the build they began with.
      const second = await page.context().newPage();
      await second.goto(url);
      await second.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));
      const isWaiting = () =>
        second.evaluate(async () => (await navigator.serviceWorker.ready).waiting !== null);
      expect(await untilIt(isWaiting, Boolean)).toBe(true);
      await second.reload();
      expect(await second.title()).toBe('Rondure');
      await second.close();

      // The browser may count a page for a moment after it was closed. And the page comes once more by itself, so an opening may be broken off.
      const titleOpenedAnew = () =>
        page.goto(url).then(
          () => page.title(),
          () => '',
        );
      expect(await untilIt(titleOpenedAnew, (seen) => seen === 'Newer')).toBe('Newer');
      await expect.poll(() => shells(page).catch(() => [])).toEqual(['rondure-shell-newer']);
    },
    PATIENCE_MS,
  );

  it(
    'keeps nothing of the interface in the worker but pictures',
    async () => {
      const webFolder = join(temporaryFolder(), 'web');
      cpSync(BUILT, webFolder, { recursive: true });
      const bench = await openBench({ webFolder });
      await addPlant(bench.url, 'Far greenhouse');
      const page = await openHeld(bench.url);
      await page.goto(bench.url);
      await page.getByRole('article').getByRole('link', { name: 'Far greenhouse' }).waitFor();
      const held = await page.evaluate(async () => {
        const names = await caches.keys();
        const keys = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
        return keys.flat().map(({ url }) => new URL(url).pathname);
      });
      expect(held).toContain('/');
      expect(held.filter((path) => path.startsWith('/api/'))).toEqual([]);
    },
    PATIENCE_MS,
  );
});
