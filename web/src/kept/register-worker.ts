/** Has the app open without a network from the next time on, where the browser allows it: over https, or from the machine itself. */
export function registerWorker(): void {
  // While developing, files come fresh from their sources.
  if (!import.meta.env.PROD || !('serviceWorker' in navigator)) return;
  navigator.serviceWorker.register('/worker.js').catch(() => {
    // Then the app opens with a network only, as it did before.
  });
}
