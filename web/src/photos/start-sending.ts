import { readHeld, whenOthersTell } from './held-photos.ts';
import { sendNow, sendWaiting } from './send-queue.ts';

let started = false;

/**
 * Has what waits on this device sent whenever that may succeed: now, with the network, when the page is looked
 * at again. Called again, it tries at once.
 */
export function startSending(): void {
  if (started) {
    void sendNow();
    return;
  }
  started = true;
  window.addEventListener('online', () => void sendNow());
  window.addEventListener('pageshow', () => void sendNow());
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') void sendNow();
  });
  // This page may have to take over from one that was closed half-way.
  whenOthersTell(() => void readHeld().then(sendWaiting));
  void sendNow();
}
