import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';
import type { Stand } from '../../server/schemas/stand.ts';
import { noteFaults } from './note-faults.ts';
import { openBrowser } from './open-browser.ts';
import { type RunningApp, startApp } from './start-app.ts';

const SAMPLES = join(import.meta.dirname, '../../sample-images');
const LAST_WEEK = join(SAMPLES, 'window-regal/2026-11-15.jpg');
const TODAY = join(SAMPLES, 'window-regal/2026-11-22.jpg');
const PATIENCE_MS = 180_000;

/** The camera is Chromium's own stand-in, which plays a sample photo: no dialog asks, nothing is real but the page. */
describe('a grower photographs with the last outline laid over', () => {
  let app: RunningApp;
  let browser: Browser;
  let context: BrowserContext;
  let page: Page;
  let plant: Plant;
  let clip: string;
  const faults: string[] = [];

  const plantPage = async () =>
    (await (await fetch(`${app.url}/api/plants/${plant.id}`)).json()) as PlantPage;
  const openLive = async () => {
    await page.getByRole('button', { name: 'Add photos' }).click();
    await page.getByRole('button', { name: /Live picture/ }).click();
  };

  beforeAll(async () => {
    clip = join(mkdtempSync(join(tmpdir(), 'rondure-clip-')), 'camera.mjpeg');
    // Motion JPEG is one JPEG after the other.
    const frame = await sharp(TODAY).resize(1600, 1200).jpeg({ quality: 92 }).toBuffer();
    writeFileSync(clip, Buffer.concat([frame, frame, frame]));
    app = await startApp('off');
    browser = await openBrowser([
      '--use-fake-device-for-media-stream',
      '--use-fake-ui-for-media-stream',
      `--use-file-for-fake-video-capture=${clip}`,
    ]);
    context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      permissions: ['camera'],
    });
    // Shorter than the tests’ own, so that what was waited for is told.
    context.setDefaultTimeout(PATIENCE_MS / 2);
    page = await context.newPage();
    noteFaults(page, faults);
    const post = async (path: string, json: unknown) =>
      (
        await fetch(`${app.url}/api${path}`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(json),
        })
      ).json();
    const stand = (await post('/stands', { name: 'Sill', sinceDay: '2026-11-01' })) as Stand;
    plant = (await post('/plants', {
      name: 'Sill regal',
      kind: 'regal',
      rimMm: 130,
      standId: stand.id,
    })) as Plant;
    const body = new FormData();
    body.set('day', '2026-11-15');
    const earlier = await sharp(readFileSync(LAST_WEEK)).jpeg({ quality: 90 }).toBuffer();
    body.set('photos', new Blob([new Uint8Array(earlier)], { type: 'image/jpeg' }), 'last-week.jpg');
    await fetch(`${app.url}/api/plants/${plant.id}/photos`, { method: 'POST', body });
    while ((await plantPage()).sittings[0]?.views[0]?.state !== 'measured') {
      await new Promise((resolve) => setTimeout(resolve, 500));
    }
  }, PATIENCE_MS);

  afterAll(async () => {
    await browser?.close();
    await app?.stop();
    if (clip) rmSync(join(clip, '..'), { recursive: true, force: true });
  });

  it(
    'sees last week’s outline and rim where they lay in the photo, over the moving picture',
    async () => {
      await page.goto(`${app.url}/plants/${plant.id}`);
      await openLive();
      const layOver = page.getByTestId('lay-over');
      await layOver.waitFor();
      await page.getByText(/Move the camera until pot rim and outline lie on what you see/).waitFor();
      const besidePx = () =>
        layOver.evaluate((drawn) => {
          const [laid, seen] = [drawn, drawn.ownerDocument.querySelector('video')].map((one) =>
            one?.getBoundingClientRect(),
          );
          const sides = ['x', 'y', 'width', 'height'] as const;
          return Math.max(...sides.map((side) => Math.abs((laid?.[side] ?? 0) - (seen?.[side] ?? -1))));
        });
      await expect.poll(besidePx).toBeLessThan(0.6);
      const [view] = (await plantPage()).sittings[0]?.views ?? [];
      const path = await layOver.locator('path').first().getAttribute('d');
      // The first point of the path is the first of the outline, in the photo's own px.
      const [, x, y] = /^M(\S+) (\S+)L/.exec(path ?? '') ?? [];
      const [first] = view?.outlinePx ?? [];
      expect(Number(x)).toBeCloseTo(first?.[0] ?? Number.NaN, 0);
      expect(Number(y)).toBeCloseTo(first?.[1] ?? Number.NaN, 0);
    },
    PATIENCE_MS,
  );

  it(
    'makes the lay-over stronger or weaker, and shows the earlier picture in it',
    async () => {
      const silhouette = page.getByTestId('lay-over').locator('path').first();
      const strength = async () => Number(await silhouette.getAttribute('fill-opacity'));
      const before = await strength();
      await page.getByRole('slider', { name: /Lay-over/ }).focus();
      await page.keyboard.press('ArrowRight');
      await page.keyboard.press('ArrowRight');
      await expect.poll(strength).toBeGreaterThan(before);
      await page.getByRole('button', { name: 'Earlier picture' }).click();
      await page.getByTestId('lay-over').locator('image').waitFor({ state: 'attached' });
    },
    PATIENCE_MS,
  );

  it(
    'releases the shutter, and the photo is kept, measured and judged',
    async () => {
      await page.getByRole('button', { name: 'Take the photo' }).click();
      await page.getByText(/^Measured: roundness \d+/).waitFor();
      await page.getByText(/^● It will do\.|^▲ Better take it again\./).waitFor();
      const { sittings } = await plantPage();
      expect(sittings).toHaveLength(2);
      const [view] = sittings[0]?.views ?? [];
      expect(view?.fileName).toMatch(/^live-\d{4}-\d{2}-\d{2}-\d{6}\.jpg$/);
      expect([view?.widthPx, view?.heightPx]).toEqual([1600, 1200]);
      expect(view?.report?.status).toBe('measured');
    },
    PATIENCE_MS,
  );

  it(
    'lets the camera go when the screen closes',
    async () => {
      await page.getByRole('button', { name: 'Take another' }).click();
      await page.getByTestId('lay-over').waitFor();
      const track = await page
        .locator('video')
        .evaluateHandle((video: HTMLVideoElement) => (video.srcObject as MediaStream).getVideoTracks()[0]);
      await page.getByRole('button', { name: 'Close the camera' }).click();
      await expect.poll(() => track.evaluate((one) => one?.readyState)).toBe('ended');
    },
    PATIENCE_MS,
  );

  it(
    'reads why it is refused, and has the ordinary button, when the camera is not lent',
    async () => {
      await page.evaluate(() => {
        navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', 'NotAllowedError'));
      });
      await openLive();
      await page.getByText(/The camera was not lent to this page/).waitFor();
      await page.getByText('Take an ordinary photo', { exact: true }).waitFor();
      await page.getByRole('button', { name: 'Close the camera' }).click();
    },
    PATIENCE_MS,
  );

  it(
    'is told in words where a page may not have the camera at all',
    async () => {
      await page.addInitScript(() => {
        Object.defineProperty(window, 'isSecureContext', { value: false });
      });
      await page.reload();
      await page.getByRole('button', { name: 'Add photos' }).click();
      await page.getByText(/needs this page to come over https/).waitFor();
      expect(await page.getByRole('button', { name: /Live picture/ }).count()).toBe(0);
      await page.getByText('Take a photo', { exact: true }).waitFor();
    },
    PATIENCE_MS,
  );

  it('met no fault on the way', () => {
    expect(faults).toEqual([]);
  });
});
