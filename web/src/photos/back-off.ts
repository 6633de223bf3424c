const FIRST_MS = 2_000;
const LONGEST_MS = 5 * 60_000;

/**
 * How long to wait after the n-th failure in a row before trying again: 2 s, doubled each time, five minutes
 * at most, and up to a quarter less so that several phones do not come at once.
 *
 * @param failures 1 or more
 * @param chance 0–1
 */
export function waitAfterMs(failures: number, chance: number): number {
  return Math.min(LONGEST_MS, FIRST_MS * 2 ** (failures - 1)) * (1 - chance / 4);
}

/** Whether a refusal may pass by itself; the photo is then tried again without being asked. */
export function mayPass(status: number): boolean {
  return holdsUpAll(status) || status === 408 || status >= 500;
}

/** What would meet every other photo too: no network, not let in, too much at once, server stopped, disk full. */
const MEETS_ALL = new Set([0, 401, 429, 502, 503, 504, 507]);

export function holdsUpAll(status: number): boolean {
  return MEETS_ALL.has(status);
}
