/** Once the first screen stands, so that nothing of it waits for this. */
const SETTLED_MS = 2_000;

/**
 * Fetches what is needed in the greenhouse while there is a network: over plain http no service worker holds
 * the app, and an open page must be able to take photos when the network goes.
 */
export function fetchAhead(): void {
  if ('serviceWorker' in navigator) return;
  setTimeout(() => {
    void Promise.allSettled([
      import('../plant/PlantScreen.tsx'),
      import('../photos/AddPhotosSheet.tsx'),
      import('../taking/TurnedScreen.tsx'),
      import('../cut-list/CutListScreen.tsx'),
      import('./kept-answers.ts'),
    ]);
  }, SETTLED_MS);
}
