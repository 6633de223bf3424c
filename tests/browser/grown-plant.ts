import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Plant } from '../../server/schemas/plant.ts';

const SAMPLES = join(import.meta.dirname, '../../sample-images');

/** What is told of a plant that stands where the sample window regal does. */
export const LANTERN = { name: 'Lantern', kind: 'regal', variety: '', rimMm: 130, showDay: null } as const;

/** Asks the server that a test has started. */
export async function ask<Answer>(appUrl: string, path: string, init?: RequestInit): Promise<Answer> {
  const answer = await fetch(`${appUrl}/api${path}`, init);
  return (answer.status === 204 ? undefined : await answer.json()) as Answer;
}

export function asJson(method: string, body: object): RequestInit {
  return { method, headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}

/** A plant of the test's own with sample photos on the given days, waited for until all are measured. */
export async function grownPlant(
  appUrl: string,
  form: object,
  photos: readonly { readonly file: string; readonly day: string; readonly turnDeg?: number }[],
): Promise<Plant> {
  const plant = await ask<Plant>(appUrl, '/plants', asJson('POST', form));
  for (const { file, day, turnDeg = 0 } of photos) {
    const body = new FormData();
    body.set('turnDeg', String(turnDeg));
    body.set('day', day);
    body.set('photos', new File([new Uint8Array(await storedAnew(file))], `${day}.jpg`));
    await ask(appUrl, `/plants/${plant.id}/photos`, { method: 'POST', body });
  }
  for (;;) {
    const { sittings } = await ask<PlantPage>(appUrl, `/plants/${plant.id}`);
    const views = sittings.flatMap((sitting) => sitting.views);
    if (views.length === photos.length && views.every(({ state }) => state === 'measured')) return plant;
    await new Promise((resolve) => setTimeout(resolve, 500));
  }
}

/** A sample photo stored anew: the store would not keep a photo twice. */
function storedAnew(file: string): Promise<Buffer> {
  return sharp(readFileSync(join(SAMPLES, file)))
    .keepExif()
    .jpeg({ quality: 92 })
    .toBuffer();
}
