import { useEffect, useState } from 'react';
import { refusalWords } from './camera-access.ts';

export type Camera =
  | { readonly at: 'starting' }
  | { readonly at: 'live'; readonly stream: MediaStream }
  | { readonly at: 'refused'; readonly words: string };

/** More than any camera gives: the browser then takes the finest it has. */
const FINEST_PX = 4096;

/** Opens the camera that looks away from the grower, as fine as it goes, and lets it go when the screen closes. */
export function useCamera(aspect: number | null): Camera {
  const [camera, setCamera] = useState<Camera>({ at: 'starting' });
  useEffect(() => {
    let wanted = true;
    let open: MediaStream | null = null;
    const shape = aspect === null ? {} : { aspectRatio: { ideal: aspect } };
    navigator.mediaDevices
      .getUserMedia({
        audio: false,
        video: { facingMode: { ideal: 'environment' }, width: { ideal: FINEST_PX }, ...shape },
      })
      .then((stream) => {
        open = stream;
        // The screen may have been closed while the grower was asked.
        if (!wanted) return letGo(stream);
        for (const track of stream.getVideoTracks()) {
          track.addEventListener('ended', () =>
            setCamera({ at: 'refused', words: 'The camera was taken away. Open the live picture again.' }),
          );
        }
        setCamera({ at: 'live', stream });
      })
      .catch((fault: unknown) => {
        if (wanted) setCamera({ at: 'refused', words: refusalWords(fault) });
      });
    return () => {
      wanted = false;
      if (open) letGo(open);
    };
  }, [aspect]);
  return camera;
}

function letGo(stream: MediaStream): void {
  for (const track of stream.getTracks()) track.stop();
}
