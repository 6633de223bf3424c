import { day } from '../../../core/day/day.ts';
import type { KeptPhoto } from '../kept/kept-database.ts';
import { keepPhoto, keptBytes, keptPhotos, letPhotoGo } from '../kept/kept-photos.ts';
import { changeSending, isUnsent, notKeeping, type Sending, sendings } from './sending.ts';
import { noteWaiting } from './waiting-flag.ts';

/** Photos that only this page holds, because the browser keeps nothing. */
const inThisPage = new Map<string, File>();

const NO_ROOM =
  'This device has no room left to keep photos. Make room, and leave this page open until they are sent.';
const KEEPS_NOTHING =
  'This browser keeps nothing for this page, as in a private window. Leave this page open until the photos are sent.';

/** Tells the other pages of this browser that a photo came or went. */
const others = 'BroadcastChannel' in window ? new BroadcastChannel('rondure-photos') : null;

export function tellOthers(): void {
  others?.postMessage('changed');
}

export function whenOthersTell(hear: () => void): void {
  others?.addEventListener('message', hear);
}

/** Puts a chosen file on the device before it counts as chosen; in the page where that cannot be. */
export async function holdPhoto(sending: Sending, file: File): Promise<void> {
  const { key } = sending;
  askBeforeLosing();
  const bytes = await file.arrayBuffer().catch(() => null);
  if (bytes === null) {
    const detail = 'This file cannot be read any more. Choose it again.';
    changeSending(key, { stage: { at: 'refused', detail }, heldBy: 'page' });
    return;
  }
  try {
    await keepPhoto(asKept(sending), bytes);
    notKeeping.write(null);
    noteWaiting(true);
    changeSending(key, { heldBy: 'device', stage: { at: 'waiting' } });
    tellOthers();
    askToStay();
  } catch (fault) {
    inThisPage.set(key, new File([bytes], file.name, { type: file.type }));
    const isFull = fault instanceof DOMException && fault.name === 'QuotaExceededError';
    notKeeping.write(isFull ? NO_ROOM : KEEPS_NOTHING);
    changeSending(key, { heldBy: 'page', stage: { at: 'waiting' } });
  }
}

/** Asks the browser not to clear what waits here when it needs room; over plain http there is nobody to ask. */
function askToStay(): void {
  void navigator.storage?.persist?.().catch(() => false);
}

/** The photo as a file; `null` when another page has sent or dropped it meanwhile. */
export async function heldFile({ key, fileName, type }: Sending): Promise<File | null> {
  const here = inThisPage.get(key);
  if (here) return here;
  const bytes = await keptBytes(key);
  return bytes && new File([bytes], fileName, { type });
}

export async function letGo({ key, heldBy }: Sending): Promise<void> {
  inThisPage.delete(key);
  if (heldBy !== 'device') return;
  await letPhotoGo(key);
  tellOthers();
}

/** Brings the list up to what the device holds: photos of earlier visits and of other pages come, those sent elsewhere go. */
export async function readHeld(): Promise<void> {
  const kept = await keptPhotos().catch(() => null);
  if (kept === null) return;
  noteWaiting(kept.length > 0);
  const known = new Map(sendings.read().map((one) => [one.key, one]));
  const keys = new Set(kept.map(({ key }) => key));
  const stays = (one: Sending) =>
    one.heldBy === 'page' || one.stage.at === 'sending' || !isUnsent(one) || keys.has(one.key);
  const came = kept.filter(({ key }) => !known.has(key)).map(asSending);
  const next = [...came, ...sendings.read().filter(stays)].sort((a, b) => a.chosenAtMs - b.chosenAtMs);
  sendings.write(next);
}

let asks = false;

/** Has the browser ask before a page is closed that alone holds photos. */
function askBeforeLosing(): void {
  if (asks) return;
  asks = true;
  window.addEventListener('beforeunload', (event) => {
    const alone = (one: Sending) => isUnsent(one) && one.heldBy === 'page' && one.stage.at !== 'refused';
    if (sendings.read().some(alone)) event.preventDefault();
  });
}

function asKept({ key, plantId, plantName, fileName, type, day, turnDeg, ...rest }: Sending): KeptPhoto {
  const { chosenOn, chosenAtMs, tries, stage } = rest;
  const trouble =
    stage.at === 'refused' || (stage.at === 'failed' && !stage.byItself)
      ? { at: stage.at, detail: stage.detail }
      : null;
  return { key, plantId, plantName, fileName, type, day, turnDeg, chosenOn, chosenAtMs, tries, trouble };
}

function asSending({ trouble, chosenOn, ...photo }: KeptPhoto): Sending {
  const stage: Sending['stage'] =
    trouble === null
      ? { at: 'waiting' }
      : trouble.at === 'refused'
        ? { at: 'refused', detail: trouble.detail }
        : { at: 'failed', detail: trouble.detail, byItself: false };
  return { ...photo, chosenOn: day(chosenOn), heldBy: 'device', stage };
}
