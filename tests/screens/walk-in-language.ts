import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { allScreens } from '../browser/all-screens.ts';
import { openCombination } from '../browser/tasks/combination.ts';
import { plantNamed } from '../browser/tasks/sample-bench.ts';
import type { Picture } from './screens-page.ts';
import { takePicture } from './take-picture.ts';

/** Charts and pictures are drawn after the first words. */
const SETTLED_MS = 1200;

/** Pictures of every screen, whole, on a phone that speaks another language. */
export async function walkInLanguage(
  browser: Browser,
  appUrl: string,
  language: string,
  folder: string,
): Promise<Picture[]> {
  const { id } = await plantNamed(appUrl, 'Window regal');
  const context = await openCombination(browser, { device: 'phone', shade: 'light' });
  await context.addInitScript((chosen) => {
    localStorage.setItem('rondure.language', JSON.stringify(chosen));
  }, language);
  const page = await context.newPage();
  const pictures: Picture[] = [];
  for (const [step, path] of Object.entries(allScreens(id))) {
    await page.goto(appUrl + path);
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    await page.waitForTimeout(SETTLED_MS);
    const file = `${language}-${step.replaceAll(' ', '-')}.webp`;
    await takePicture(page, join(folder, file), true);
    pictures.push({ task: `every screen in ${language}`, step, combination: 'phone, light', file });
  }
  await context.close();
  return pictures;
}
