import type { Progress } from '../../../server/schemas/pages.ts';
import { isOutside } from './outside.ts';
import { refresh } from './queries.ts';

/** The browser reconnects a line that broke; one that was refused it gives up, and it is opened anew after so long. */
const REFUSED_MS = 15_000;

/** Listens for photos moving on and keeps the screens fresh. `onBack` hears that the server is there again. Returns what stops it. */
export function followProgress(onBack: () => void): () => void {
  let source: EventSource;
  let clock: ReturnType<typeof setTimeout>;
  let cutOff = false;

  function open(): void {
    source = new EventSource('/api/events');
    source.addEventListener('progress', (event) => {
      const { plantId } = JSON.parse(event.data) as Progress;
      void refresh(plantId);
    });
    source.addEventListener('error', () => {
      // What is in sight is asked for once more: it then says as of when it is, or that this device is let out.
      if (!cutOff) void refresh();
      cutOff = true;
      if (source.readyState === EventSource.CLOSED && !isOutside.read()) clock = setTimeout(open, REFUSED_MS);
    });
    // What happened while the line was down was not heard: read everything anew.
    source.addEventListener('open', () => {
      if (cutOff) {
        void refresh();
        onBack();
      }
      cutOff = false;
    });
  }

  open();
  return () => {
    clearTimeout(clock);
    source.close();
  };
}
