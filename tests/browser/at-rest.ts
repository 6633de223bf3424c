import type { Page, Request } from 'playwright-core';

/** Two looks so far apart, alike, with nothing under way. */
const BETWEEN_LOOKS_MS = 250;

/**
 * Watches what a page fetches, from before it is opened. What comes back waits until nothing is under way but the stream of
 * events, which never rests, and nothing was drawn anew between two looks.
 */
export function watchRest(page: Page): () => Promise<void> {
  const underWay = new Set<Request>();
  page.on('request', (request) => {
    if (request.resourceType() !== 'eventsource') underWay.add(request);
  });
  page.on('requestfinished', (request) => underWay.delete(request));
  page.on('requestfailed', (request) => underWay.delete(request));
  return async () => {
    // Answered when the page has time to answer: drawing comes before.
    const look = () => page.evaluate(() => document.documentElement.outerHTML);
    let last = '';
    for (let now = await look(); underWay.size > 0 || now !== last; now = await look()) {
      last = now;
      await page.waitForTimeout(BETWEEN_LOOKS_MS);
    }
  };
}
