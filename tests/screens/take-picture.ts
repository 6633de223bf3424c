import type { Page } from 'playwright-core';
import sharp from 'sharp';

/** What opens and closes takes a sixth of a second, a picture a moment to come. */
const SETTLED_MS = 350;

/** Taller than that a picture cannot be kept as WebP (16,383 px). */
const TALLEST_PX = 16_000;

/** Writes what the window shows, or the page's whole length, as WebP. */
export async function takePicture(page: Page, file: string, whole: boolean): Promise<void> {
  await page.waitForTimeout(SETTLED_MS);
  const picture = sharp(await page.screenshot({ fullPage: whole }));
  const { width, height } = await picture.metadata();
  await picture
    .extract({ left: 0, top: 0, width, height: Math.min(height, TALLEST_PX) })
    .webp({ quality: 72 })
    .toFile(file);
}
