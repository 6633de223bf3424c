import type { CDPSession, Locator, Page } from 'playwright-core';

type Place = readonly [number, number];

/** Where places of the photo (px of the photo) lie on the screen, read off the stage as it is drawn. */
export async function onScreen(stage: Locator, places: readonly Place[]): Promise<Place[]> {
  const box = await stage.boundingBox();
  const words = await stage.locator('svg').first().getAttribute('viewBox');
  const [left, top, width, height] = (words ?? '').split(' ').map(Number);
  if (!box || left === undefined || top === undefined || !width || !height) {
    throw new TypeError(`Expected a stage with a viewBox but received ${words}`);
  }
  return places.map(([x, y]) => [
    box.x + ((x - left) / width) * box.width,
    box.y + ((y - top) / height) * box.height,
  ]);
}

/** Paints from place to place with the mouse's first button. */
export async function paintByMouse(page: Page, stage: Locator, places: readonly Place[]): Promise<void> {
  const [first, ...rest] = await onScreen(stage, places);
  if (!first) throw new TypeError('Expected places to paint over but received none');
  await page.mouse.move(first[0], first[1]);
  await page.mouse.down();
  for (const [x, y] of rest) await page.mouse.move(x, y, { steps: 6 });
  await page.mouse.up();
}

/** Paints from place to place with one finger. */
export async function paintByFinger(
  cdp: CDPSession,
  stage: Locator,
  places: readonly Place[],
): Promise<void> {
  const points = await onScreen(stage, places);
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', finger: Place[]) =>
    cdp.send('Input.dispatchTouchEvent', { type, touchPoints: finger.map(([x, y]) => ({ x, y, id: 1 })) });
  await touch('touchStart', points.slice(0, 1));
  for (const point of points.slice(1)) await touch('touchMove', [point]);
  await touch('touchEnd', []);
}

/** Two fingers go apart about a place of the photo. */
export async function pinchOpen(cdp: CDPSession, stage: Locator, about: Place): Promise<void> {
  const [at] = await onScreen(stage, [about]);
  if (!at) throw new TypeError('Expected a place to pinch about but received none');
  const fingers = (apartPx: number) => [
    { x: at[0] - apartPx, y: at[1], id: 1 },
    { x: at[0] + apartPx, y: at[1], id: 2 },
  ];
  const touch = (
    type: 'touchStart' | 'touchMove' | 'touchEnd',
    touchPoints: { x: number; y: number; id: number }[],
  ) => cdp.send('Input.dispatchTouchEvent', { type, touchPoints });
  await touch('touchStart', fingers(30).slice(0, 1));
  await touch('touchStart', fingers(30));
  for (const apartPx of [40, 50, 60, 70]) await touch('touchMove', fingers(apartPx));
  await touch('touchEnd', []);
}
