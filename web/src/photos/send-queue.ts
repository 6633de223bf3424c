import type { Day } from '../../../core/day/day.ts';
import type { Upload } from '../../../server/schemas/pages.ts';
import { refresh } from '../api/queries.ts';
import { createStore } from '../parts/store.ts';
import { todayHere } from '../words/day-words.ts';
import { type PhotoToSend, sendPhoto } from './send-photo.ts';

/** One chosen file on its way. The file stays in hand until the server keeps it, so it can be sent again. */
export interface Sending extends PhotoToSend {
  readonly key: number;
  readonly plantId: string;
  /** Day on which it was chosen, by this device: a page may stay open for a week. */
  readonly chosenOn: Day;
  readonly stage: SendingStage;
}

export type SendingStage =
  | { readonly at: 'waiting' }
  | { readonly at: 'sending'; readonly share: number }
  | { readonly at: 'kept'; readonly viewId: string }
  | { readonly at: 'known'; readonly detail: string; readonly viewId: string; readonly plantId: string }
  | { readonly at: 'refused'; readonly detail: string }
  | { readonly at: 'failed'; readonly detail: string };

export const sendings = createStore<readonly Sending[]>([]);

/** Whether the server has not got the file yet: closing the page now would lose the choice. */
export function isUnsent({ stage }: Sending): boolean {
  return stage.at === 'waiting' || stage.at === 'sending' || stage.at === 'failed';
}

/** Has the browser ask before a page with unsent photos is closed. Returns what stops it. */
export function askBeforeLosing(): () => void {
  const ask = (event: BeforeUnloadEvent) => {
    if (sendings.read().some(isUnsent)) event.preventDefault();
  };
  window.addEventListener('beforeunload', ask);
  return () => window.removeEventListener('beforeunload', ask);
}

let nextKey = 1;
let busy = false;

/** `turnsDeg`: the turn of each file, as far as it is told. */
export function queuePhotos(
  plantId: string,
  files: readonly File[],
  day: string | null,
  turnsDeg: readonly (number | null)[] = [],
): void {
  const chosenOn = todayHere();
  const added = files.map((file, k): Sending => {
    const turnDeg = turnsDeg[k] ?? null;
    return { key: nextKey++, plantId, chosenOn, file, day, turnDeg, stage: { at: 'waiting' } };
  });
  sendings.write([...sendings.read(), ...added]);
  void sendWaiting();
}

export function sendAgain(key: number): void {
  move(key, { at: 'waiting' });
  void sendWaiting();
}

/** Takes finished and refused files off the list; what still waits, moves or failed stays. */
export function clearSettled(plantId: string): void {
  const settled = ['kept', 'known', 'refused'];
  sendings.write(sendings.read().filter((one) => one.plantId !== plantId || !settled.includes(one.stage.at)));
}

export function dropSending(key: number): void {
  sendings.write(sendings.read().filter((one) => one.key !== key));
}

/** One file at a time: a phone's line is narrow, and the order of the views stays the order chosen. */
async function sendWaiting(): Promise<void> {
  if (busy) return;
  busy = true;
  for (let next = firstWaiting(); next; next = firstWaiting()) {
    const { key, plantId } = next;
    move(key, { at: 'sending', share: 0 });
    move(
      key,
      await sendPhoto(plantId, next, (share) => move(key, { at: 'sending', share })).then(settle, failed),
    );
    void refresh(plantId);
  }
  busy = false;
}

function settle(answer: Upload): SendingStage {
  const photo = answer.photos[0];
  if (!photo)
    return { at: 'failed', detail: 'The server did not say what became of this photo. Send it again.' };
  switch (photo.outcome) {
    case 'kept':
      return { at: 'kept', viewId: photo.view.id };
    case 'known':
      return { at: 'known', detail: photo.detail, viewId: photo.viewId, plantId: photo.plantId };
    case 'refused':
      return { at: 'refused', detail: photo.detail };
  }
}

function failed(fault: unknown): SendingStage {
  return { at: 'failed', detail: fault instanceof Error ? fault.message : String(fault) };
}

function firstWaiting(): Sending | undefined {
  return sendings.read().find((one) => one.stage.at === 'waiting');
}

function move(key: number, stage: SendingStage): void {
  sendings.write(sendings.read().map((one) => (one.key === key ? { ...one, stage } : one)));
}
