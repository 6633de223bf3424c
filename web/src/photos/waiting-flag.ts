/** Tells the next opening of the app, before anything is fetched, that photos wait on this device. */
const KEY = 'rondure-photos-wait';

export function noteWaiting(isWaiting: boolean): void {
  try {
    if (isWaiting) localStorage.setItem(KEY, 'yes');
    else localStorage.removeItem(KEY);
  } catch {
    // Then they are found a few seconds later.
  }
}

export function areWaiting(): boolean {
  try {
    return localStorage.getItem(KEY) !== null;
  } catch {
    return false;
  }
}
