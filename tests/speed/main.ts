// How long each step takes for a 12-megapixel photo, from upload to the measured event: `npm run speed`.
// A measurement, not a test: what is slow depends on the machine.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { availableParallelism, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import { findPlant } from '../../core/canopy/find-plant.ts';
import { NOTHING_KNOWN } from '../../core/canopy/known.ts';
import { measureFound } from '../../core/measure-photo.ts';
import { openHouse } from '../../server/house.ts';
import { checkPhoto } from '../../server/intake/check-photo.ts';
import { maskToClearPng, rasterToJpeg } from '../../server/intake/encode-picture.ts';
import { receivePhoto } from '../../server/intake/receive-photo.ts';
import { serve } from '../../server/serve.ts';
import { homeFolders } from '../../server/store/data-home.ts';
import { keepUpload, writeWhole } from '../../server/store/photo-files.ts';
import { client } from '../server/fixtures/client.ts';
import { drawPlant } from '../server/fixtures/synthetic-plant.ts';

const RUNS = 5;
const PLANT = { width: 4032, height: 3024, size: 0.3 };

const times = new Map<string, number[]>();

async function timed<T>(step: string, work: () => Promise<T> | T): Promise<T> {
  const start = performance.now();
  const result = await work();
  times.set(step, [...(times.get(step) ?? []), performance.now() - start]);
  return result;
}

/** A photo with noise as a camera's sensor has it, so that its JPEG weighs what a camera's does. */
async function cameraPhoto(seed: number): Promise<Buffer> {
  const { data, info } = await drawPlant({ ...PLANT, seed })
    .raw()
    .toBuffer({ resolveWithObject: true });
  let state = seed + 1;
  for (let at = 0; at < data.length; at += 1) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    data[at] = Math.min(255, Math.max(0, (data[at] ?? 0) + ((state >>> 24) % 41) - 20));
  }
  const { default: sharp } = await import('sharp');
  return sharp(data, { raw: { width: info.width, height: info.height, channels: 3 } })
    .jpeg({ quality: 90 })
    .toBuffer();
}

/** The steps one by one, on this thread. */
async function stepByStep(photo: Buffer, folder: string, run: number): Promise<void> {
  const path = join(folder, `photo-${run}.jpg`);
  await writeFile(path, photo);
  const home = { ...homeFolders(folder), photos: folder, pictures: folder, incoming: folder };
  await timed('intake: read, hash, decode, encode the screen copy', () => receivePhoto(path));
  const checked = await timed('  decode and shrink to 1600 px', () => checkPhoto(photo));
  if (!checked.ok) throw new Error(checked.hint);
  const jpeg = await timed('  encode the screen copy', () => rasterToJpeg(checked.upright.raster));
  await timed('store: original and copy, synced to disk', async () => {
    await writeWhole(home, join(folder, `copy-${run}.jpg`), jpeg);
    await keepUpload(path, join(folder, `original-${run}.jpg`));
  });
  const { upright } = checked;
  const found = await timed('cut-out: canopy and pot', () => findPlant(upright.raster, NOTHING_KNOWN));
  const measured = await timed('measures: outline, ball, scores, plus-minus', () =>
    measureFound(found, {
      name: 'photo.jpg',
      widthPx: upright.widthPx,
      heightPx: upright.heightPx,
      rasterWidthPx: upright.raster.width,
      rasterHeightPx: upright.raster.height,
      rimMm: 130,
      turnDeg: 0,
      notes: [],
    }),
  );
  const { canopy } = measured;
  if (canopy === null) throw new Error(`not measured: ${measured.report.hint}`);
  await timed('encode the mask', () => maskToClearPng(canopy));
}

/** The whole way through the running server, its threads warm. */
async function throughTheServer(photos: readonly Buffer[], folder: string): Promise<void> {
  const house = openHouse(join(folder, 'home'), pino({ level: 'error' }));
  const serving = await serve(house.services, { host: '127.0.0.1', port: 0, webFolder: folder });
  try {
    const { addPlant, upload } = client(serving.url);
    const plant = await addPlant({ rimMm: 130 });
    for (const [run, bytes] of photos.entries()) {
      const step = run === 0 ? 'first photo after the start, threads cold' : 'POST to measured event';
      await timed(step, async () => {
        const measured = new Promise<void>((resolve) => {
          const stop = house.services.progress.listen((step) => {
            if (!('viewId' in step) || (step.state !== 'measured' && step.state !== 'failed')) return;
            stop();
            resolve();
          });
        });
        const answer = await timed('  POST to answer', () => upload(plant.id, [{ name: 'a.jpg', bytes }]));
        if (answer.body.photos[0].outcome !== 'kept') throw new Error(JSON.stringify(answer.body));
        await measured;
      });
    }
  } finally {
    await serving.close();
    await house.close();
  }
}

function median(values: readonly number[]): number {
  return values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
}

const folder = await mkdtemp(join(tmpdir(), 'rondure-speed-'));
try {
  const photos = await Promise.all(Array.from({ length: RUNS + 1 }, (_, seed) => cameraPhoto(seed)));
  await throughTheServer(photos, folder);
  for (const [run, photo] of photos.slice(1).entries()) await stepByStep(photo, folder, run);
  const megabytes = (photos[1]?.length ?? 0) / 1e6;
  console.log(
    `${PLANT.width} × ${PLANT.height} px, ${megabytes.toFixed(1)} MB JPEG, median of ${RUNS}; ${cpus()[0]?.model}, ${availableParallelism()} cores; peak ${Math.round(process.resourceUsage().maxRSS / 1024)} MB`,
  );
  for (const [step, values] of times) {
    const worst = Math.max(...values);
    console.log(
      `${step.padEnd(52)} ${median(values).toFixed(0).padStart(6)} ms   worst ${worst.toFixed(0).padStart(6)}`,
    );
  }
} finally {
  await rm(folder, { recursive: true, force: true });
}
