import { fetchAhead } from './kept/fetch-ahead.ts';
import { registerWorker } from './kept/register-worker.ts';
import { startSending } from './photos/start-sending.ts';

/** Once the first screen stands: sends what waits on this device, and has the app at hand without a network. */
export function start(): void {
  startSending();
  registerWorker();
  fetchAhead();
}
