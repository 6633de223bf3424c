import { AT_HAND } from './at-hand.ts';

/** Once the first screen stands, so that nothing of it waits for this. */
const SETTLED_MS = 2_000;

/**
 * Fetches what is needed in the greenhouse while there is a network: over plain http no service worker holds
 * the app, and an open page must be able to take photos when the network goes. What did not come is asked for
 * again when the network is back.
 */
export function fetchAhead(): void {
  if ('serviceWorker' in navigator) return;
  setTimeout(() => void fetchParts(), SETTLED_MS);
}

async function fetchParts(): Promise<void> {
  const parts = await Promise.allSettled([
    import('../plant/PlantScreen.tsx'),
    import('../photos/AddPhotosSheet.tsx'),
    import('../taking/TurnedScreen.tsx'),
    import('../cut-list/CutListScreen.tsx'),
    import('./kept-answers.ts'),
    // Each photo is sent with its fingerprint: a browser may not ask twice for a part that once failed to come.
    import('@noble/hashes/sha2.js'),
  ]);
  if (parts.every(({ status }) => status === 'fulfilled')) performance.mark(AT_HAND);
  else window.addEventListener('online', () => void fetchParts(), { once: true });
}
