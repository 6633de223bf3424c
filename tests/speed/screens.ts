// What a screen costs a phone, on a processor slowed four times: `npm run speed-screens`.
// A measurement, not a test: what is slow depends on the machine.

import { cpus } from 'node:os';
import { gzipSync } from 'node:zlib';
import type { Browser, Page } from 'playwright-core';
import type { Bench } from '../../server/schemas/pages.ts';
import { wholeBench } from '../browser/measured-sample.ts';
import { openBrowser } from '../browser/open-browser.ts';
import { startApp } from '../browser/start-app.ts';

const SLOWED = 4;
const PHONE = { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, hasTouch: true } as const;
/** Interactive: the main thread rests so long, no task over 50 ms, as the Web Performance Working Group's Long Tasks API counts them. */
const REST_MS = 2000;
const MANY_PLANTS = 200;

interface ScreenCost {
  readonly scriptKB: number;
  readonly requests: number;
  readonly firstPaintMs: number;
  readonly largestPaintMs: number;
  readonly interactiveMs: number;
  readonly blockedMs: number;
  readonly layoutShift: number;
}

/** Watches from the first line of the page on; read by `costOf`. */
const WATCH = `
  window.watched = { long: [], shift: 0, largest: 0 };
  new PerformanceObserver((list) => { for (const e of list.getEntries()) watched.long.push([e.startTime, e.duration]); })
    .observe({ type: 'longtask', buffered: true });
  new PerformanceObserver((list) => { for (const e of list.getEntries()) if (!e.hadRecentInput) watched.shift += e.value; })
    .observe({ type: 'layout-shift', buffered: true });
  new PerformanceObserver((list) => { for (const e of list.getEntries()) watched.largest = e.startTime; })
    .observe({ type: 'largest-contentful-paint', buffered: true });
`;

async function slowPage(browser: Browser): Promise<Page> {
  const context = await browser.newContext({ ...PHONE, bypassCSP: true });
  const page = await context.newPage();
  const session = await context.newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  await page.addInitScript(WATCH);
  return page;
}

async function costOf(browser: Browser, url: string): Promise<ScreenCost> {
  const page = await slowPage(browser);
  let requests = 0;
  const scripts: Promise<number>[] = [];
  page.on('response', (response) => {
    requests++;
    if (response.url().endsWith('.js')) scripts.push(response.body().then((body) => gzipSync(body).length));
  });
  await page.goto(url);
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  await page.waitForFunction(
    `performance.now() - Math.max(0, ...watched.long.map(([start, ms]) => start + ms)) > ${REST_MS} && performance.now() > ${2 * REST_MS}`,
  );
  const seen = await page.evaluate<{
    long: [number, number][];
    shift: number;
    largest: number;
    first: number;
  }>(`({ ...watched, first: performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0 })`);
  const scriptBytes = (await Promise.all(scripts)).reduce((sum, bytes) => sum + bytes, 0);
  await page.context().close();
  const afterPaint = seen.long.filter(([start, ms]) => start + ms > seen.first);
  return {
    scriptKB: scriptBytes / 1000,
    requests,
    firstPaintMs: seen.first,
    largestPaintMs: seen.largest,
    interactiveMs: Math.max(seen.first, ...afterPaint.map(([start, ms]) => start + ms)),
    blockedMs: afterPaint.reduce((sum, [, ms]) => sum + Math.max(0, ms - 50), 0),
    layoutShift: seen.shift,
  };
}

/** Frames that came late while a bench of many plants is scrolled from end to end. */
async function scrollMany(
  browser: Browser,
  url: string,
): Promise<{ frames: number; late: number; worstMs: number }> {
  const page = await slowPage(browser);
  await page.route('**/api/bench', async (route) => {
    const bench = (await (await route.fetch()).json()) as Bench;
    const plants = Array.from({ length: MANY_PLANTS }, (_, k) => {
      const row = bench.plants[k % bench.plants.length] as Bench['plants'][number];
      return {
        ...row,
        plant: { ...row.plant, id: `${row.plant.id}-${k}`, name: `${row.plant.name} ${k + 1}` },
      };
    });
    await route.fulfill({ json: { ...bench, plants } });
  });
  await page.goto(url);
  await page.getByRole('heading', { level: 1 }).first().waitFor();
  await page.waitForTimeout(2 * REST_MS);
  const gaps = await page.evaluate<number[]>(`new Promise((done) => {
    const gaps = []; let last = performance.now();
    const step = (now) => {
      gaps.push(now - last); last = now;
      const before = scrollY; scrollBy(0, 60);
      if (scrollY === before || gaps.length > 600) done(gaps.slice(1)); else requestAnimationFrame(step);
    };
    requestAnimationFrame(step);
  })`);
  await page.context().close();
  return { frames: gaps.length, late: gaps.filter((ms) => ms > 50).length, worstMs: Math.max(...gaps) };
}

const app = await startApp();
const browser = await openBrowser();
try {
  // A machine that measures beside would make every screen late.
  const { plants } = await wholeBench(app.url);
  const id = (plants[0] as Bench['plants'][number]).plant.id;
  console.log(
    `${cpus()[0]?.model}, Chromium ${browser.version()}, processor slowed ${SLOWED} times, phone of 390 px\n`,
  );
  console.log('screen       script kB  requests  first paint  largest  interactive  blocked  layout shift');
  for (const [name, path] of [
    ['bench', '/'],
    ['plant', `/plants/${id}`],
    ['cut list', `/plants/${id}/cut-list`],
    ['calendar', '/calendar'],
    ['stands', '/stands'],
  ] as const) {
    const cost = await costOf(browser, app.url + path);
    const ms = (value: number, width: number) => `${Math.round(value)} ms`.padStart(width);
    console.log(
      name.padEnd(12) +
        cost.scriptKB.toFixed(1).padStart(10) +
        String(cost.requests).padStart(10) +
        ms(cost.firstPaintMs, 13) +
        ms(cost.largestPaintMs, 9) +
        ms(cost.interactiveMs, 13) +
        ms(cost.blockedMs, 9) +
        cost.layoutShift.toFixed(3).padStart(14),
    );
  }
  const { frames, late, worstMs } = await scrollMany(browser, app.url);
  console.log(
    `\n${MANY_PLANTS} plants scrolled through: ${late} of ${frames} frames later than 50 ms, the worst ${Math.round(worstMs)} ms`,
  );
} finally {
  await browser.close();
  await app.stop();
}
