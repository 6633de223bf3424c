// How many photos a minute are measured anew after an upgrade, and how the app answers meanwhile: `npm run speed-remeasure -- [PHOTOS]`, 100 when left out.
// A measurement, not a test: what is slow depends on the machine.
import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import pino from 'pino';
import sharp from 'sharp';
import { openHouse } from '../../server/house.ts';
import type { RemeasuringAnswer } from '../../server/schemas/remeasuring.ts';
import { serve } from '../../server/serve.ts';
import { client } from '../server/fixtures/client.ts';

const SAMPLES = join(import.meta.dirname, '../../sample-images');
const PLANTS = ['window-regal', 'greenhouse-regal', 'porch-zonal', 'corner-angel'];
/** A method that there never was. */
const OLDER = '0';
const ASK_EVERY_MS = 500;
const WEEK = 7;

const wanted = Number(process.argv[2] ?? 100);
const folder = await mkdtemp(join(tmpdir(), 'rondure-remeasure-'));

/** Sample photos; those that repeat differ in their last bits of compression, so that each is a photo of its own. */
async function samplePhotos(count: number): Promise<{ plant: string; bytes: Buffer }[]> {
  const there = new Set(await readdir(SAMPLES));
  const files = await Promise.all(
    PLANTS.filter((name) => there.has(name)).map(async (plant) =>
      (await readdir(join(SAMPLES, plant)))
        .filter((name) => /^\d.*\.jpg$/.test(name))
        .map((name) => ({ plant, name })),
    ),
  );
  const all = files.flat();
  return Promise.all(
    Array.from({ length: count }, async (_, k) => {
      const { plant, name } = all[k % all.length] as (typeof all)[number];
      const original = await readFile(join(SAMPLES, plant, name));
      const round = Math.floor(k / all.length);
      const bytes =
        round === 0
          ? original
          : await sharp(original)
              .jpeg({ quality: 94 - round })
              .toBuffer();
      return { plant, bytes };
    }),
  );
}

const quantile = (sorted: readonly number[], share: number) =>
  sorted[Math.ceil(share * sorted.length) - 1] ?? Number.NaN;

async function opened() {
  const house = openHouse(join(folder, 'home'), pino({ level: 'error' }));
  const serving = await serve(house.services, { host: '127.0.0.1', port: 0, webFolder: folder });
  const close = async () => {
    await serving.close();
    await house.close();
  };
  return { house, close, ...client(serving.url) };
}

try {
  const photos = await samplePhotos(wanted);
  const before = await opened();
  before.house.services.queue.close();
  const plantIds = new Map<string, string>();
  for (const [k, { plant, bytes }] of photos.entries()) {
    const id = plantIds.get(plant) ?? (await before.addPlant({ name: plant, rimMm: 130 })).id;
    plantIds.set(plant, id);
    const day = new Date(Date.UTC(2024, 0, 1 + WEEK * k)).toISOString().slice(0, 10);
    await before.upload(id, [{ name: `${k}.jpg`, bytes }], { day });
  }
  // Numbers of before: a report with nothing in it that an older method left, so that only the measuring anew is timed.
  const { db } = before.house.services;
  db.exec(`UPDATE views SET state = 'measured', look_up = 0`);
  db.prepare(
    `INSERT INTO measurements (view_id, method_version, measured_at, report, outline)
     SELECT id, ?, '2025-01-01T00:00:00.000Z', '{}', '[]' FROM views`,
  ).run(OLDER);
  await before.close();

  const begun = performance.now();
  const app = await opened();
  const answersMs: number[] = [];
  const progress = async () => (await app.send('GET', '/api/keeping/remeasuring')).body as RemeasuringAnswer;
  let last = await progress();
  let isDone = false;
  const done = app.house.services.queue.whenIdle().then(() => {
    isDone = true;
  });
  while (!isDone) {
    const asked = performance.now();
    await app.send('GET', '/api/bench');
    answersMs.push(performance.now() - asked);
    last = await progress();
    await Promise.race([done, new Promise((resolve) => setTimeout(resolve, ASK_EVERY_MS))]);
  }
  const minutes = (performance.now() - begun) / 60_000;
  last = await progress();
  await app.close();
  const sorted = answersMs.sort((a, b) => a - b);
  console.log(`${wanted} photos of 4 sample plants, ${cpus()[0]?.model.trim()}, ${cpus().length} cores`);
  console.log(
    `measured anew: ${wanted - last.outdated} in ${minutes.toFixed(1)} min, ${((wanted - last.outdated) / minutes).toFixed(1)} photos a minute, one at a time; ${last.brokeDown} broke down`,
  );
  console.log(
    `GET /api/bench meanwhile, ${sorted.length} times: median ${quantile(sorted, 0.5).toFixed(0)} ms, 95 % ${quantile(sorted, 0.95).toFixed(0)} ms, at most ${quantile(sorted, 1).toFixed(0)} ms`,
  );
} finally {
  await rm(folder, { recursive: true, force: true });
}
