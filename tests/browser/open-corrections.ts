import type { Page } from 'playwright-core';

/** Unfolds what puts the photo in sight right by hand; leaves it open where it stands open already. */
export async function openCorrections(page: Page): Promise<void> {
  const fold = page.locator('details', { has: page.getByText('Put this photo right', { exact: true }) });
  await fold.waitFor();
  if (!(await fold.evaluate((element) => (element as HTMLDetailsElement).open))) {
    await fold.locator('summary').first().click();
  }
}
