import type { Page } from 'playwright-core';

/** Notes what goes wrong in a page beside what a test looks at: faults nobody caught, and errors in the console. */
export function noteFaults(page: Page, faults: string[]): void {
  page.on('pageerror', (fault) => faults.push(fault.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
}
