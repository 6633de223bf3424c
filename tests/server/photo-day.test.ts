import { describe, expect, it } from 'vitest';
import type { PlantPage } from '../../server/schemas/pages.ts';
import { onlyEntry } from './fixtures/client.ts';
import { openBench } from './fixtures/open-bench.ts';
import { cameraJpeg, plantJpeg } from './fixtures/photos.ts';

async function benchWith(bytes: Buffer) {
  const bench = await openBench({});
  const plant = await bench.addPlant({ rimMm: 130 });
  const entry = onlyEntry(await bench.upload(plant.id, [{ name: 'a.jpg', bytes }]));
  if (entry.outcome !== 'kept') throw new Error(entry.detail);
  await bench.services.queue.whenIdle();
  const days = async () =>
    ((await bench.send('GET', `/api/plants/${plant.id}`)).body as PlantPage).sittings
      .filter(({ views }) => views.length > 0)
      .map(({ day }) => day);
  return { ...bench, path: `/api/views/${entry.view.id}`, days };
}

describe('the day of a photo', () => {
  it('goes back to the one that the camera wrote, whatever was given since', async () => {
    const { send, path, days } = await benchWith(await cameraJpeg('2026:02:14 10:00:00'));
    const [camera] = await days();
    expect((await send('PATCH', path, { day: '2026-03-05' })).body.takenFrom).toBe('grower');
    expect(await days()).toEqual(['2026-03-05']);
    expect((await send('PATCH', path, { day: null })).body.takenFrom).toBe('exif');
    expect(await days()).toEqual([camera]);
  });

  it('stays where the camera wrote none, and the refusal says what to do', async () => {
    const { send, path, days } = await benchWith(await plantJpeg());
    await send('PATCH', path, { day: '2026-03-05' });
    const refused = await send('PATCH', path, { day: null });
    expect(refused.status).toBe(409);
    expect(refused.body.detail).toBe(
      'The camera wrote no day into this photo. Give the day on which it was taken.',
    );
    expect(await days()).toEqual(['2026-03-05']);
  });
});
