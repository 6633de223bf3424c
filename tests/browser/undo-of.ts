import type { Locator, Page } from 'playwright-core';

/** Undo in the bar, once it stands beside these words: until then it may still be that of what was done before. */
export function undoOf(page: Page, words: string | RegExp): Locator {
  return page
    .getByRole('status')
    .filter({ hasText: words })
    .getByRole('button', { name: 'Undo', exact: true });
}
