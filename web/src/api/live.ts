import type { Progress } from '../../../server/schemas/pages.ts';
import { refresh } from './queries.ts';

/** Listens for photos moving on and keeps the screens fresh. Returns what stops it. */
export function followProgress(): () => void {
  const source = new EventSource('/api/events');
  let cutOff = false;
  source.addEventListener('progress', (event) => {
    const { plantId } = JSON.parse(event.data) as Progress;
    void refresh(plantId);
  });
  source.addEventListener('error', () => {
    cutOff = true;
  });
  // What happened while the line was down was not heard: read everything anew.
  source.addEventListener('open', () => {
    if (cutOff) void refresh();
    cutOff = false;
  });
  return () => source.close();
}
