import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { loadSamples, readSeason, SamplesMissing } from '../../server/samples/load-samples.ts';
import type { ShowList } from '../../server/schemas/show.ts';
import { openBench, temporaryFolder } from './fixtures/open-bench.ts';
import { cameraJpeg, plantJpeg } from './fixtures/photos.ts';

async function drawnSeason(): Promise<string> {
  const folder = temporaryFolder();
  mkdirSync(join(folder, 'bramble'));
  const days = ['2026-05-03', '2026-05-10'];
  for (const [seed, day] of days.entries()) {
    const bytes = await cameraJpeg(`${day.replaceAll('-', ':')} 10:30:00`, { seed });
    writeFileSync(join(folder, `bramble/${day}.jpg`), bytes);
  }
  writeFileSync(join(folder, 'bramble/empty.jpg'), await plantJpeg(9, { plantsAt: [] }));
  const plant = {
    key: 'bramble',
    name: 'Evening Bramble',
    kind: 'regal',
    variety: 'Dark Lantern',
    rimMm: 130,
    showDay: '2026-08-15',
    empty: 'bramble/empty.jpg',
    sittings: days.map((day) => ({ day, views: [{ file: `bramble/${day}.jpg`, turnDeg: 0 }] })),
    stops: [{ day: '2026-03-01', depth: 'deep', note: '' }],
    notes: [{ day: '2026-05-03', text: 'First bud.' }],
    turns: [{ day: '2026-05-03', facesLightDeg: 90 }],
  };
  const show = {
    name: 'Lantern Show',
    day: '2026-08-15',
    classes: [{ name: 'Class 1', potMm: 120 }],
    entries: [{ plant: 'bramble', class: 'Class 1' }],
  };
  writeFileSync(join(folder, 'season.json'), JSON.stringify({ shows: [show], plants: [plant] }));
  return folder;
}

describe('the sample bench', () => {
  it('comes in through the same intake, the newest sittings first', async () => {
    const { services, send, measured } = await openBench();
    const folder = await drawnSeason();
    await loadSamples(services, folder, await readSeason(folder));
    await services.queue.whenIdle();
    const bench = (await send('GET', '/api/bench')).body;
    expect(bench.plants.length).toBe(1);
    const { plant } = bench.plants[0];
    expect(plant).toMatchObject({ name: 'Evening Bramble', sample: true, rimMm: 130 });
    const page = (await send('GET', `/api/plants/${plant.id}`)).body;
    expect(page.sittings.map(({ day }: { day: string }) => day)).toEqual(['2026-05-10', '2026-05-03']);
    expect([page.stops.length, page.notes.length, page.turns.length]).toEqual([1, 1, 1]);
    expect(measured[0]?.photoName).toBe('2026-05-10.jpg');
    expect(measured.every(({ emptyPath }) => emptyPath !== null)).toBe(true);
  });

  it('has shows, with its plants in their classes', async () => {
    const { services, send } = await openBench();
    const folder = await drawnSeason();
    await loadSamples(services, folder, await readSeason(folder));
    const { shows } = (await send('GET', '/api/shows')).body as ShowList;
    expect(shows.map(({ show }) => [show.name, show.day])).toEqual([['Lantern Show', '2026-08-15']]);
    expect(shows[0]?.entries).toEqual([
      expect.objectContaining({
        plantName: 'Evening Bramble',
        isAim: true,
        classId: shows[0]?.show.classes[0]?.id,
        checks: [expect.objectContaining({ limit: 'pot', verdict: 'too large' })],
      }),
    ]);
  });

  it('is put away and brought back as a whole, beside the grower’s own plants', async () => {
    const { services, send, addPlant } = await openBench();
    const folder = await drawnSeason();
    await loadSamples(services, folder, await readSeason(folder));
    const own = await addPlant({ name: 'My own' });
    const { id: showId } = (await send('POST', '/api/shows', { name: 'Own show', day: '2026-07-01' })).body;
    await send('PUT', `/api/plants/${own.id}/entries/${showId}`, {});
    const shows = async () =>
      (await send('GET', '/api/shows')).body.shows.map(({ show }: { show: { name: string } }) => show.name);
    const names = async () =>
      (await send('GET', '/api/bench')).body.plants
        .map(({ plant }: { plant: { name: string } }) => plant.name)
        .sort();
    expect((await send('POST', '/api/sample/put-away')).status).toBe(204);
    expect(await names()).toEqual(['My own']);
    expect(await shows()).toEqual(['Own show']);
    expect((await send('POST', '/api/sample/bring-back')).status).toBe(204);
    expect(await names()).toEqual(['Evening Bramble', 'My own']);
    expect(await shows()).toEqual(['Own show', 'Lantern Show']);
  });

  it('has a plant seen all round, with its turns', async () => {
    const season = await readSeason(join(import.meta.dirname, '../../sample-images'));
    const turned = season.plants.filter(({ sittings }) => sittings.some(({ views }) => views.length >= 4));
    expect(turned.length).toBeGreaterThan(0);
    for (const { turns } of turned) expect(turns.length).toBeGreaterThan(2);
  });

  it('that is missing or does not read is left out with a sentence', async () => {
    const folder = temporaryFolder();
    await expect(readSeason(folder)).rejects.toThrow(SamplesMissing);
    await expect(readSeason(folder)).rejects.toThrow('Run "npm run render-samples" to make it.');
    writeFileSync(join(folder, 'season.json'), '{"plants": 3}');
    await expect(readSeason(folder)).rejects.toThrow(SamplesMissing);
  });
});
