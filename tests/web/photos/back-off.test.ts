import { describe, expect, it } from 'vitest';
import { holdsUpAll, mayPass, waitAfterMs } from '../../../web/src/photos/back-off.ts';

describe('waiting between tries', () => {
  it('doubles from two seconds to five minutes and stays there', () => {
    const waits = [1, 2, 3, 8, 9, 30].map((failures) => waitAfterMs(failures, 0));
    expect(waits).toEqual([2_000, 4_000, 8_000, 256_000, 300_000, 300_000]);
  });

  it('is up to a quarter shorter by chance, so that phones do not come at once', () => {
    expect(waitAfterMs(3, 1)).toBe(6_000);
    expect(waitAfterMs(3, 0.5)).toBe(7_000);
  });
});

describe('a refusal', () => {
  it.each([
    [0, true, true],
    [401, true, true],
    [429, true, true],
    [503, true, true],
    [507, true, true],
    // One photo that breaks the server must not hold the others up.
    [500, true, false],
    [408, true, false],
    [400, false, false],
    [404, false, false],
    [413, false, false],
  ])('of status %i passes by itself: %s, meets all photos: %s', (status, passes, all) => {
    expect([mayPass(status), holdsUpAll(status)]).toEqual([passes, all]);
  });
});
