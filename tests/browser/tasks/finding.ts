import type { Locator, Page } from 'playwright-core';

/** Waits for the page of that name. */
export async function headed(page: Page, name: string): Promise<void> {
  await page.getByRole('heading', { level: 1, name }).waitFor();
}

/** Opens a plant from the bench. */
export async function openPlant(page: Page, appUrl: string, name: string): Promise<void> {
  await page.goto(appUrl);
  await page.getByRole('article').getByRole('link', { name, exact: true }).click();
  await headed(page, name);
}

/** Puts a part of the page at the top of the window, as a grower scrolls to it. */
export async function scrollTo(part: Locator): Promise<void> {
  await part.waitFor();
  await part.evaluate((element) => element.scrollIntoView({ block: 'start' }));
}
