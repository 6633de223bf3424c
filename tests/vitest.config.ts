import { defineConfig } from 'vitest/config';

const BROWSER_TESTS = 'tests/browser/**/*.test.ts';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  test: {
    projects: [
      {
        extends: true,
        test: {
          name: 'house',
          include: ['tests/**/*.test.ts', 'tests/**/*.test.tsx'],
          exclude: [BROWSER_TESTS],
          testTimeout: 60_000,
          hookTimeout: 120_000,
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        // A browser, its server and the server's workers keep two cores busy by themselves: one test file at a time.
        extends: true,
        test: {
          name: 'screens',
          include: [BROWSER_TESTS],
          testTimeout: 300_000,
          hookTimeout: 300_000,
          // The usual second is over before a busy machine has drawn anything.
          expect: { poll: { timeout: 60_000, interval: 100 } },
          maxWorkers: 1,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
