import type { Browser, BrowserContext } from 'playwright-core';
import { noonInTheFarEast } from '../start-on-day.ts';
import { TODAY } from './sample-bench.ts';

/** A device and a shade that a task is done on. */
export interface Combination {
  readonly device: 'phone' | 'desk';
  readonly shade: 'light' | 'dark';
}

export const COMBINATIONS: readonly Combination[] = [
  { device: 'phone', shade: 'light' },
  { device: 'desk', shade: 'dark' },
  { device: 'phone', shade: 'dark' },
  { device: 'desk', shade: 'light' },
];

const VIEWPORTS = { phone: { width: 390, height: 844 }, desk: { width: 1280, height: 900 } } as const;

export function combinationName({ device, shade }: Combination): string {
  return `${device}, ${shade}`;
}

/** A browser that looks like that device, on the day of the newest photos. */
export async function openCombination(
  browser: Browser,
  { device, shade }: Combination,
): Promise<BrowserContext> {
  const context = await browser.newContext({
    viewport: VIEWPORTS[device],
    hasTouch: device === 'phone',
    colorScheme: shade,
    reducedMotion: 'reduce',
    locale: 'en-GB',
    timezoneId: 'Europe/Amsterdam',
  });
  await context.clock.setFixedTime(noonInTheFarEast(TODAY));
  return context;
}
