import type { Page } from 'playwright-core';

/**
 * Pictures of numbers that say nothing to who cannot see them: the name tells no figure, and no table of them stands in their section.
 * Drawings that show how a thing is done tell it in their name, so a name of several words is enough for those without figures.
 */
export function wordlessPictures(page: Page): Promise<string[]> {
  return page.getByRole('main').evaluate((main) => {
    const FEW_WORDS = 5;
    const pictures = [...main.querySelectorAll('[role="img"], canvas, img')].filter(
      (one) => one.getClientRects().length > 0 && !one.closest('[aria-hidden="true"]'),
    );
    return pictures.flatMap((picture) => {
      const name = picture.getAttribute('aria-label') ?? picture.getAttribute('alt') ?? '';
      const place = picture.closest('section, article, figure, dialog, tr') ?? main;
      const isTold =
        /\d/.test(name) || name.split(' ').length >= FEW_WORDS || place.querySelector('table, dl') !== null;
      return name !== '' && isTold ? [] : [`${picture.outerHTML.slice(0, 120)}`];
    });
  });
}

/** What still moves, or would take its time to change. */
export function movingParts(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const SOON_MS = 20;
    const running = document.getAnimations().map((one) => {
      const target = (one.effect as KeyframeEffect | null)?.target;
      return `${target?.tagName} ${target?.className} runs`;
    });
    const slow = [...document.querySelectorAll('body *')].flatMap((element) => {
      const { transitionDuration, animationName } = getComputedStyle(element);
      const takesMs = Math.max(
        ...transitionDuration
          .split(',')
          .map((one) => Number.parseFloat(one) * (one.trim().endsWith('ms') ? 1 : 1000)),
      );
      return takesMs > SOON_MS || animationName !== 'none' ? [`${element.tagName} ${element.className}`] : [];
    });
    return [...running, ...slow];
  });
}
