import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { openBench, type TestBench } from '../fixtures/open-bench.ts';
import { plantJpeg } from '../fixtures/photos.ts';

/** A bench with two plants, a stand, four measured photos, a stop, a note and a show. */
export async function filledBench(): Promise<TestBench & { readonly plantIds: string[] }> {
  const bench = await openBench();
  const stand = (await bench.send('POST', '/api/stands', { name: 'Potting bench' })).body;
  const plants = [
    await bench.addPlant({ name: 'Evening Bramble', standId: stand.id }),
    await bench.addPlant({ name: 'Quarry Größe', kind: 'zonal', rimMm: 130 }),
  ];
  for (const [at, plant] of plants.entries()) {
    const files = await Promise.all(
      [1, 2].map(async (k) => ({ name: `${k}.jpg`, bytes: await plantJpeg(10 * at + k) })),
    );
    await bench.upload(plant.id, files, { day: `2026-05-0${at + 1}` });
    await bench.send('POST', `/api/plants/${plant.id}/notes`, { day: '2026-05-03', text: 'dry' });
    await bench.send('POST', `/api/plants/${plant.id}/stops`, { day: '2026-02-03', depth: 'tip', note: '' });
  }
  await bench.send('POST', '/api/shows', { name: 'Hall', day: '2026-07-04' });
  await bench.services.queue.whenIdle();
  return { ...bench, plantIds: plants.map(({ id }) => id) };
}

/** What the interface answers about everything a grower has put in. */
export async function allAnswers(bench: TestBench): Promise<unknown> {
  const plants = (await bench.send('GET', '/api/bench')).body.plants as {
    plant?: { id: string };
    id?: string;
  }[];
  const ids = plants.map((one) => one.plant?.id ?? one.id);
  const paths = [
    '/api/bench',
    '/api/stands',
    '/api/shows',
    ...ids.flatMap((id) => [`/api/plants/${id}`, `/api/plants/${id}/season`]),
  ];
  const answers: Record<string, unknown> = {};
  for (const path of paths) {
    const { status, body } = await bench.send('GET', path);
    if (status !== 200) throw new Error(`${path} answered ${status}`);
    answers[path] = body;
  }
  return answers;
}

/** SHA-256 of every file below a folder, by its path. */
export function imprint(folder: string): Record<string, string> {
  const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((name) =>
    statSync(join(folder, name)).isFile(),
  );
  return Object.fromEntries(
    files.sort().map((name) => [
      name,
      createHash('sha256')
        .update(readFileSync(join(folder, name)))
        .digest('hex'),
    ]),
  );
}
