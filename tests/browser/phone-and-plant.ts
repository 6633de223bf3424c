import type { Browser, BrowserContext, Page, Route } from 'playwright-core';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';
import { AT_HAND } from '../../web/src/kept/at-hand.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';

/** A photo as a browser's file entry takes it. */
export interface ChosenFile {
  readonly name: string;
  readonly mimeType: string;
  readonly buffer: Buffer;
}

/** So many different photos, `shot-01.jpg` and on. */
export function shots(count: number, firstSeed = 1): Promise<ChosenFile[]> {
  return Promise.all(
    Array.from({ length: count }, async (_, k) => ({
      name: `shot-${String(k + 1).padStart(2, '0')}.jpg`,
      mimeType: 'image/jpeg',
      buffer: await plantJpeg(firstSeed + k),
    })),
  );
}

export async function addPlant(url: string, name: string): Promise<Plant> {
  const answer = await fetch(`${url}/api/plants`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ name, kind: 'regal' }),
  });
  return (await answer.json()) as Plant;
}

/** A phone that shows the page of a new plant. */
export async function phoneAtPlant(
  browser: Browser,
  appUrl: string,
  patienceMs: number,
): Promise<{ context: BrowserContext; page: Page; plantId: string }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true });
  context.setDefaultTimeout(patienceMs);
  const page = await context.newPage();
  const { id: plantId } = await addPlant(appUrl, 'Far greenhouse');
  await page.goto(`${appUrl}/plants/${plantId}`);
  return { context, page, plantId };
}

/** Names of the photos that the server has of a plant, each as often as it is there. */
export async function photosOf(url: string, plantId: string): Promise<string[]> {
  const page = (await (await fetch(`${url}/api/plants/${plantId}`)).json()) as PlantPage;
  return page.sittings.flatMap(({ views }) => views.map(({ fileName }) => fileName)).sort();
}

/**
 * Waits until a page would work without a network: by its service worker, or by what it has fetched ahead.
 *
 * @throws when it is not so far within two minutes
 */
export async function untilReadyForNoNetwork(page: Page): Promise<void> {
  const isReady = async (mark: string) => {
    if (navigator.serviceWorker) return (await navigator.serviceWorker.ready).active?.state === 'activated';
    return performance.getEntriesByName(mark).length > 0;
  };
  const ready = await untilIt(() => page.evaluate(isReady, AT_HAND), Boolean, 120_000);
  if (!ready) throw new Error('The page is not ready to be without a network.');
}

/** Chooses photos on a plant's page, as a grower does from the phone's gallery. */
export async function choosePhotos(page: Page, files: readonly ChosenFile[]): Promise<void> {
  await page
    .getByRole('button', { name: /^Add (photos|the first photo)$/ })
    .first()
    .click();
  await page
    .getByRole('dialog')
    .locator('input[type=file][multiple]')
    .setInputFiles([...files]);
}

/** The way of photos to the server, as the test has it. */
export interface HeldWay {
  /** Refuses no more: what is sent from here on is kept waiting for its answer, and stands on the screen meanwhile. */
  hold(): void;
  /** Lets through what waits, and all that comes. */
  open(): void;
}

/**
 * Has what is sent met by `refuse`, then held, then let through. What failed goes again by itself, so on a slow machine it
 * would be gone before the test had pressed "Send now": while it is held it is there to be pressed for.
 */
export async function holdWay(
  place: Page | BrowserContext,
  refuse: (route: Route) => Promise<void>,
): Promise<HeldWay> {
  let isRefusing = true;
  let open = () => {};
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  await place.route('**/photos', async (route) => {
    if (isRefusing) return refuse(route);
    await opened;
    // A page that is left has taken its request along.
    await route.continue().catch(() => undefined);
  });
  return {
    hold() {
      isRefusing = false;
    },
    open: () => open(),
  };
}

/** Waits until what `look` sees is as `wanted`; the last look when it never is. */
export async function untilIt<T>(
  look: () => Promise<T>,
  wanted: (seen: T) => boolean,
  ms = 120_000,
): Promise<T> {
  const end = Date.now() + ms;
  let seen = await look();
  while (!wanted(seen) && Date.now() < end) {
    await new Promise((resolve) => setTimeout(resolve, 200));
    seen = await look();
  }
  return seen;
}
