import { refresh } from '../api/queries.ts';
import { offerUndo } from '../parts/undo.ts';
import { todayHere } from '../words/day-words.ts';
import { waitAfterMs } from './back-off.ts';
import { freshKey } from './fresh-key.ts';
import { heldFile, holdPhoto, letGo, readHeld } from './held-photos.ts';
import { sendOne } from './send-one.ts';
import { forgetSending, moveSending, type Sending, sendingOf, sendings } from './sending.ts';
import { type StillHere, withSendingRight } from './sending-right.ts';

/** Another page holds the lease: looked at again so often. */
const OTHERS_TURN_MS = 4_000;

let busy = false;
let askedAgain = false;
let failures = 0;
let clock: ReturnType<typeof setTimeout> | undefined;

/**
 * Takes chosen files in hand: onto the device first, then to the server. Their keys, in the order given.
 *
 * @param turnsDeg the turn of each file, as far as it is told
 */
export function queuePhotos(
  plant: { readonly id: string; readonly name: string },
  files: readonly File[],
  day: string | null,
  turnsDeg: readonly (number | null)[] = [],
): string[] {
  const now = Date.now();
  const chosen = files.map((file, k): Sending => {
    return {
      key: freshKey(),
      plantId: plant.id,
      plantName: plant.name,
      fileName: file.name,
      type: file.type,
      day,
      turnDeg: turnsDeg[k] ?? null,
      chosenOn: todayHere(),
      // The order chosen is the order of the list, also after a reload.
      chosenAtMs: now + k / 1000,
      heldBy: 'page',
      tries: 0,
      stage: { at: 'keeping' },
    };
  });
  sendings.write([...sendings.read(), ...chosen]);
  void holdAll(chosen, files).then(sendNow);
  return chosen.map(({ key }) => key);
}

/** One after the other: a phone's memory is narrow. */
async function holdAll(chosen: readonly Sending[], files: readonly File[]): Promise<void> {
  for (const [k, sending] of chosen.entries()) {
    const file = files[k];
    if (file) await holdPhoto(sending, file);
  }
}

/** Tries everything that waits at once, whatever the wait had been. */
export function sendNow(): Promise<void> {
  failures = 0;
  return sendWaiting();
}

export function sendAgain(key: string): void {
  moveSending(key, { at: 'waiting' });
  void sendNow();
}

/** Gives a photo up, with the way back. */
export async function dropSending(key: string): Promise<void> {
  const dropped = sendingOf(key);
  if (!dropped) return;
  const file = await heldFile(dropped).catch(() => null);
  await letGo(dropped);
  forgetSending(key);
  if (file === null) return;
  offerUndo(`The photo ${dropped.fileName} is dropped.`, async () => {
    const back: Sending = { ...dropped, heldBy: 'page', stage: { at: 'keeping' } };
    sendings.write([...sendings.read(), back]);
    await holdPhoto({ ...back, stage: { at: 'waiting' } }, file);
    void sendNow();
  });
}

/** Sends what waits on this device, unless this or another page is at it already. */
export async function sendWaiting(): Promise<void> {
  if (busy) {
    askedAgain = true;
    return;
  }
  busy = true;
  askedAgain = false;
  clearTimeout(clock);
  try {
    await readHeld();
    for (const one of sendings.read()) {
      if (one.stage.at === 'failed' && one.stage.byItself) moveSending(one.key, { at: 'waiting' });
    }
    if (firstWaiting() && !(await withSendingRight(sendAll))) sendLater(OTHERS_TURN_MS);
  } finally {
    busy = false;
    // A photo that came just as the last one had gone must not wait for the next occasion.
    if (askedAgain) sendLater(0);
  }
}

function sendLater(waitMs: number): void {
  clearTimeout(clock);
  clock = setTimeout(() => void sendWaiting(), waitMs);
}

/** One photo at a time: a phone's line is narrow, and the order of the views stays the order chosen. */
async function sendAll(stillHere: StillHere): Promise<void> {
  // While this page waited for its turn another may have sent them.
  await readHeld();
  for (let next = firstWaiting(); next; next = firstWaiting()) {
    const outcome = await sendOne(next, stillHere);
    void refresh(next.plantId);
    if (outcome === 'done') failures = 0;
    if (outcome === 'later' || outcome === 'all later') {
      failures += 1;
      sendLater(waitAfterMs(failures, Math.random()));
    }
    if (outcome === 'all later') return;
  }
}

function firstWaiting(): Sending | undefined {
  return sendings.read().find((one) => one.stage.at === 'waiting');
}
