import type { Browser, Page } from 'playwright-core';

/** Each answer of the interface is held up by as much as this, ms. */
const MOST_HELD_UP_MS = 600;

/**
 * Makes every page that a browser opens as slow as on an old phone in a far greenhouse: the processor so many times slower, and each
 * answer of the interface late by a random while, so that answers overtake each other.
 */
export function slowDown(browser: Browser, times: number): Browser {
  const openContext = browser.newContext.bind(browser);
  browser.newContext = async (options) => {
    const context = await openContext(options);
    const openPage = context.newPage.bind(context);
    context.newPage = async () => {
      const page = await openPage();
      await slowDownPage(page, times);
      return page;
    };
    return context;
  };
  return browser;
}

async function slowDownPage(page: Page, times: number): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: times });
  // Where the answer comes in: what a test routes or cuts off is untouched, and what the server did is done.
  session.on('Fetch.requestPaused', ({ requestId }) => {
    const goOn = () => session.send('Fetch.continueRequest', { requestId });
    // A page that is left has taken its requests along.
    setTimeout(() => void goOn().catch(() => {}), Math.random() * MOST_HELD_UP_MS);
  });
  await session.send('Fetch.enable', { patterns: [{ urlPattern: '*/api/*', requestStage: 'Response' }] });
}
