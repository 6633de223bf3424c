import type { Upload } from '../../../server/schemas/pages.ts';
import { Refusal } from '../api/fetch-json.ts';
import { noteTrouble } from '../kept/kept-photos.ts';
import { holdsUpAll, mayPass } from './back-off.ts';
import { heldFile, letGo } from './held-photos.ts';
import { sendPhoto } from './send-photo.ts';
import { changeSending, forgetSending, moveSending, type Sending } from './sending.ts';
import type { StillHere } from './sending-right.ts';

/**
 * What came of a try. `done`: the server has said what became of the photo. `stuck`: it cannot go as it is.
 * `later`: it may go by itself later. `all later`: what held it up holds the others up too.
 */
export type TryOutcome = 'done' | 'stuck' | 'later' | 'all later';

/** Sends one photo and notes, on the device and on the screen, how it went. */
export async function sendOne(sending: Sending, stillHere: StillHere): Promise<TryOutcome> {
  const { key } = sending;
  moveSending(key, { at: 'sending', share: 0 });
  const file = await heldFile(sending).catch(() => null);
  if (file === null) {
    // Another page has sent or dropped it.
    forgetSending(key);
    return 'done';
  }
  // Before it goes: the page may be gone when the answer comes.
  const tries = sending.tries + 1;
  await noteOnDevice(sending, { tries, trouble: null });
  changeSending(key, { tries });
  try {
    const answer = await sendPhoto(sending, file, (share) => {
      stillHere();
      moveSending(key, { at: 'sending', share });
    });
    return await settle(sending, answer);
  } catch (fault) {
    return await noteFailure(sending, fault);
  }
}

/** Times that a photo goes by itself which arrives altered: what alters it each time does not pass. */
const MOST_ALTERED = 3;

async function settle(sending: Sending, answer: Upload): Promise<TryOutcome> {
  const photo = answer.photos[0];
  if (!photo) throw new Error('The server did not say what became of this photo. Send it again.');
  const { key } = sending;
  switch (photo.outcome) {
    case 'kept':
      await letGo(sending);
      moveSending(key, { at: 'kept', viewId: photo.view.id });
      return 'done';
    case 'known': {
      const { detail, viewId, plantId } = photo;
      await letGo(sending);
      // Its first answer was lost on the way: it is in, which is all that was wanted.
      const isOurs = sending.tries > 0 && plantId === sending.plantId;
      moveSending(key, isOurs ? { at: 'kept', viewId } : { at: 'known', detail, viewId, plantId });
      return 'done';
    }
    case 'refused': {
      if (photo.altered) return noteAltered(sending, photo.detail);
      const trouble = { at: 'refused', detail: photo.detail } as const;
      await noteOnDevice(sending, { tries: sending.tries + 1, trouble });
      moveSending(key, trouble);
      return 'done';
    }
  }
}

async function noteAltered(sending: Sending, detail: string): Promise<TryOutcome> {
  const byItself = sending.tries + 1 < MOST_ALTERED;
  moveSending(sending.key, { at: 'failed', detail, byItself });
  if (byItself) return 'later';
  await noteOnDevice(sending, { tries: sending.tries + 1, trouble: { at: 'failed', detail } });
  return 'stuck';
}

async function noteFailure(sending: Sending, fault: unknown): Promise<TryOutcome> {
  const detail = fault instanceof Error ? fault.message : String(fault);
  const status = fault instanceof Refusal ? fault.status : 0;
  const byItself = mayPass(status);
  moveSending(sending.key, { at: 'failed', detail, byItself });
  if (!byItself) {
    await noteOnDevice(sending, { tries: sending.tries + 1, trouble: { at: 'failed', detail } });
    return 'stuck';
  }
  return holdsUpAll(status) ? 'all later' : 'later';
}

async function noteOnDevice(sending: Sending, change: Parameters<typeof noteTrouble>[1]): Promise<void> {
  // What cannot be noted is found out again at the next try.
  if (sending.heldBy === 'device') await noteTrouble(sending.key, change).catch(() => {});
}
