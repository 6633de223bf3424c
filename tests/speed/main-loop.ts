// How long the server's main thread keeps others waiting while eight photos are taken in and measured:
// `node --import tsx tests/speed/main-loop.ts`. A measurement, not a test: what is slow depends on the machine.
import { mkdtemp, rm } from 'node:fs/promises';
import { availableParallelism, cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { Worker } from 'node:worker_threads';
import pino from 'pino';
import { openHouse } from '../../server/house.ts';
import { serve } from '../../server/serve.ts';
import { client } from '../server/fixtures/client.ts';
import { drawPlant } from '../server/fixtures/synthetic-plant.ts';

const PHOTOS = 8;

/** Sends the photos from a thread of its own, as a phone would, so that sending is no work of the main thread. */
const SENDER = `
const { workerData, parentPort } = require('node:worker_threads');
(async () => {
  for (const bytes of workerData.photos) {
    const form = new FormData();
    form.append('photos', new Blob([bytes]), 'a.jpg');
    const answer = await fetch(workerData.address, { method: 'POST', body: form });
    const { photos } = await answer.json();
    if (photos[0].outcome !== 'kept') throw new Error(JSON.stringify(photos));
  }
  parentPort.postMessage('sent');
})();`;

function sendAll(address: string, photos: readonly Buffer[]): Promise<void> {
  return new Promise((resolve, reject) => {
    const sender = new Worker(SENDER, { eval: true, workerData: { address, photos } });
    sender.once('error', reject);
    sender.once('exit', () => resolve());
  });
}

const cameraPhoto = (seed: number) =>
  drawPlant({ width: 4032, height: 3024, size: 0.3, seed }).jpeg({ quality: 90 }).toBuffer();

const folder = await mkdtemp(join(tmpdir(), 'rondure-loop-'));
const house = openHouse(join(folder, 'home'), pino({ level: 'error' }));
const serving = await serve(house.services, { host: '127.0.0.1', port: 0, webFolder: folder });
try {
  const plant = await client(serving.url).addPlant({ rimMm: 130 });
  const address = `${serving.url}/api/plants/${plant.id}/photos`;
  const photos: Buffer[] = [];
  for (let seed = 0; seed <= PHOTOS; seed += 1) photos.push(await cameraPhoto(seed));
  // The first one starts the threads, which is not what is measured.
  await sendAll(address, photos.slice(0, 1));
  await house.services.queue.whenIdle();
  const delay = monitorEventLoopDelay({ resolution: 1 });
  const start = performance.now();
  delay.enable();
  await sendAll(address, photos.slice(1));
  await house.services.queue.whenIdle();
  delay.disable();
  const ms = (ns: number) => (ns / 1e6).toFixed(1);
  console.log(
    `${PHOTOS} photos of 12 megapixels sent and measured in ${((performance.now() - start) / 1000).toFixed(1)} s; ${cpus()[0]?.model}, ${availableParallelism()} cores, load ${loadavg()[0]?.toFixed(1)}`,
  );
  console.log(
    `main thread held up, 1 ms of it the sampling: median ${ms(delay.percentile(50))} ms, p99 ${ms(delay.percentile(99))} ms, longest ${ms(delay.max)} ms`,
  );
} finally {
  await serving.close();
  await house.close();
  await rm(folder, { recursive: true, force: true });
}
