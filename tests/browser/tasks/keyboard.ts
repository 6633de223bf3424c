import type { Locator, Page } from 'playwright-core';

/** More stops than any page has. */
const MOST_STOPS = 400;

/**
 * Presses Tab until `target` has the focus.
 *
 * @returns the stops on the way at which no focus could be seen
 * @throws when the focus never comes there, or stays where it is
 */
export async function pressTabTo(page: Page, target: Locator, name: string): Promise<string[]> {
  await target.waitFor();
  const unseen: string[] = [];
  for (let press = 0; press < MOST_STOPS; press++) {
    await page.keyboard.press('Tab');
    unseen.push(...(await unseenFocus(page)));
    if (await target.evaluate((element) => element === document.activeElement)) return unseen;
  }
  throw new RangeError(`Expected Tab to reach ${name} within ${MOST_STOPS} stops`);
}

/** The element with the focus, in words, when neither it nor what stands for it shows an outline or a glow; else nothing. */
export function unseenFocus(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const focused = document.activeElement;
    if (!focused || focused === document.body) return [];
    // The parts of a day's entry are the browser's own, and so is their focus.
    if (focused.matches('input[type=date]')) return [];
    // A radio or a file entry is drawn by its label, a card's link by what covers the card, a side of the pot by its slice.
    const around = [focused, focused.nextElementSibling, focused.closest('label')];
    for (let one = focused.parentElement, up = 0; one && up < 3; one = one.parentElement, up++)
      around.push(one);
    const styles = around.flatMap((one) => (one ? [getComputedStyle(one)] : []));
    const isSeen =
      [...styles, getComputedStyle(focused, '::after')].some(
        ({ outlineStyle, outlineWidth }) => outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0,
      ) ||
      // What is drawn on a photo glows.
      getComputedStyle(focused).filter !== 'none';
    if (isSeen) return [];
    const words = focused.getAttribute('aria-label') ?? focused.textContent?.trim().slice(0, 40);
    return [`${focused.tagName.toLowerCase()}: ${words || focused.outerHTML.slice(0, 120)}`];
  });
}
