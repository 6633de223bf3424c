import type { Upload } from '../../../server/schemas/pages.ts';
import { Refusal, refusalFromText, SERVER_AWAY } from '../api/fetch-json.ts';

/** A photo and what the grower says of it; `null` leaves it to the camera and to the collar. */
export interface PhotoToSend {
  readonly file: File;
  readonly day: string | null;
  readonly turnDeg: number | null;
}

/**
 * Sends one photo. `onShare` hears how much has gone, 0–1; fetch cannot tell that, so this is the one place
 * that uses XMLHttpRequest. Rejects with a `Refusal` whose message can be shown.
 */
export function sendPhoto(
  plantId: string,
  { file, day, turnDeg }: PhotoToSend,
  onShare: (share: number) => void,
): Promise<Upload> {
  const body = new FormData();
  // Fields before the file, so that the server knows day and turn when the file arrives.
  if (day) body.set('day', day);
  if (turnDeg !== null) body.set('turnDeg', String(turnDeg));
  body.set('photos', file);
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open('POST', `/api/plants/${plantId}/photos`);
    request.upload.addEventListener('progress', (event) => {
      if (event.lengthComputable) onShare(event.loaded / event.total);
    });
    request.addEventListener('load', () => {
      if (request.status < 200 || request.status > 299) {
        reject(refusalFromText(request.status, request.responseText));
        return;
      }
      resolve(JSON.parse(request.responseText) as Upload);
    });
    const away = () => reject(new Refusal({ status: 0, detail: SERVER_AWAY }));
    request.addEventListener('error', away);
    request.addEventListener('abort', away);
    request.send(body);
  });
}
