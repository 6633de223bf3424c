import { readFile } from 'node:fs/promises';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { addDays, day } from '../../core/day/day.ts';
import { measureFile } from '../../server/measuring/measure-file.ts';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import { ailingPlants } from '../core/foliage/ailing-plants.ts';
import { emptyStandFile, shotFile } from '../reshot/shots.ts';
import { openBench } from './fixtures/open-bench.ts';

const FIRST = day('2026-04-05');
const SERIES = 3;
/** The same picture as another file each week. */
const QUALITIES = [97, 96, 95, 94];

describe('a golden-leaved plant, photographed from week to week', () => {
  it('is normal for itself once its own leaf is learned', async () => {
    const [golden] = ailingPlants(SERIES, 1);
    const [healthy] = golden?.healthy ?? [];
    if (golden === undefined || healthy === undefined) throw new RangeError('Expected a golden plant');
    const { send, addPlant, upload, services } = await openBench({ measure: measureFile });
    const plant = await addPlant({ kind: 'zonal' });
    const empty = new FormData();
    const bytes = await readFile(await emptyStandFile(golden.emptyView));
    empty.append('photo', new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }), 'empty.jpg');
    expect((await send('PUT', `/api/plants/${plant.id}/empty-photo`, empty)).status).toBe(200);
    const rendered = await readFile(await shotFile(healthy.view));
    for (const [week, quality] of QUALITIES.entries()) {
      const file = { name: `${week}.jpg`, bytes: await sharp(rendered).jpeg({ quality }).toBuffer() };
      await upload(plant.id, [file], { day: addDays(FIRST, 7 * week) });
      await services.queue.whenIdle();
    }

    const page = plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
    const foliage = page.sittings.toReversed().map(({ views }) => views[0]?.report?.foliage ?? null);
    const [first] = foliage;
    // As a green-leaved plant it is not judged at all, or called yellow.
    expect(first == null || first.yellow.share > 0.1).toBe(true);
    expect(page.leaf?.learned.days).toEqual([0, 7, 14].map((days) => addDays(FIRST, days)));
    expect(foliage[3]).toMatchObject({ against: 'own', notCompared: null });
    expect(foliage[3]?.yellow.share).toBeLessThan(0.03);
    expect(foliage[3]?.departure).toBeLessThan(1);
  }, 300_000);
});
