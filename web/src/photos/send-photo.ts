import type { Upload } from '../../../server/schemas/pages.ts';
import { Refusal, refusalFromText, SERVER_AWAY } from '../api/fetch-json.ts';
import { appendTold } from './append-told.ts';
import type { Sending } from './sending.ts';

/** A line on which nothing moves for so long is taken for cut: a phone that left the house does not hear of it. */
const NOTHING_SENT_MS = 45_000;
const NO_ANSWER_MS = 180_000;

/**
 * Sends one photo. `onShare` hears how much has gone, 0–1; fetch cannot tell that, so this is the one place
 * that uses XMLHttpRequest. Rejects with a `Refusal` whose message can be shown.
 */
export async function sendPhoto(
  { plantId, day, turnDeg, chosenOn }: Sending,
  file: File,
  onShare: (share: number) => void,
): Promise<Upload> {
  const body = new FormData();
  // Fields before the file, so that the server knows day and turn when the file arrives.
  if (day) body.set('day', day);
  if (turnDeg !== null) body.set('turnDeg', String(turnDeg));
  body.set('chosenDay', chosenOn);
  await appendTold(body, 'photos', file);
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/api/plants/${plantId}/photos`);
    let clock: ReturnType<typeof setTimeout>;
    const wait = (ms: number) => {
      clearTimeout(clock);
      clock = setTimeout(() => request.abort(), ms);
    };
    wait(NOTHING_SENT_MS);
    request.upload.addEventListener('progress', (event) => {
      wait(NOTHING_SENT_MS);
      if (event.lengthComputable) onShare(event.loaded / event.total);
    });
    request.upload.addEventListener('load', () => wait(NO_ANSWER_MS));
    request.addEventListener('loadend', () => clearTimeout(clock));
    request.addEventListener('load', () => {
      if (request.status < 200 || request.status > 299) {
        reject(refusalFromText(request.status, request.responseText));
        return;
      }
      try {
        resolve(JSON.parse(request.responseText) as Upload);
      } catch {
        // Half an answer: the photo may be in or not, and is sent again to find out.
        away();
      }
    });
    const away = () => reject(new Refusal({ status: 0, detail: SERVER_AWAY }));
    request.addEventListener('error', away);
    request.addEventListener('abort', away);
    request.send(body);
  });
}
