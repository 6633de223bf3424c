import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { benchSchema, plantPageSchema } from '../../server/schemas/pages.ts';
import { plantSchema } from '../../server/schemas/plant.ts';
import { viewSchema } from '../../server/schemas/sitting.ts';
import { onlyEntry } from './fixtures/client.ts';
import { openBench, sampleMeasurement, sampleReport } from './fixtures/open-bench.ts';
import { cameraJpeg, plantJpeg, turnedHeic } from './fixtures/photos.ts';

const NO_ID = '00000000-0000-0000-0000-000000000000';

describe('plants', () => {
  it('are added, shown, changed field by field and put away', async () => {
    const { send, addPlant } = await openBench();
    const plant = await addPlant({ variety: 'Dark Lantern', rimMm: 130, showDay: '2026-08-15' });
    expect(plantSchema.parse(plant)).toMatchObject({ name: 'Evening Bramble', rimMm: 130, putAway: false });

    const changed = await send('PATCH', `/api/plants/${plant.id}`, { name: 'Morning Bramble' });
    expect(changed.body).toMatchObject({
      name: 'Morning Bramble',
      variety: 'Dark Lantern',
      rimMm: 130,
      showDay: '2026-08-15',
    });

    await send('PATCH', `/api/plants/${plant.id}`, { putAway: true });
    const bench = benchSchema.parse((await send('GET', '/api/bench')).body);
    expect(bench.plants).toEqual([]);
    expect(bench.putAway.map(({ name }) => name)).toEqual(['Morning Bramble']);
  });

  it('with a wrong field are refused with a pointer to it', async () => {
    const { send } = await openBench();
    const answer = await send('POST', '/api/plants', { name: ' ', kind: 'regal', rimMm: 5 });
    expect(answer.status).toBe(422);
    expect(answer.headers.get('content-type')).toContain('application/problem+json');
    expect(answer.body.errors).toEqual([
      { pointer: '/name', detail: 'Give the plant a name.' },
      {
        pointer: '/rimMm',
        detail: 'A pot rim of less than 30 mm cannot be right; measure across the outside of the rim.',
      },
    ]);
    expect((await send('GET', '/api/bench')).body.plants).toEqual([]);
  });

  it('that need most stand first', async () => {
    const { send, addPlant, upload, services } = await openBench();
    const calm = await addPlant({ name: 'Alder Bell' });
    await addPlant({ name: 'Zinnober' });
    await upload(calm.id, [{ name: 'a.jpg', bytes: await cameraJpeg('2026:05:31 10:00:00') }]);
    await services.queue.whenIdle();
    const { plants } = benchSchema.parse((await send('GET', '/api/bench')).body);
    expect(plants.map(({ plant }) => plant.name)).toEqual(['Zinnober', 'Alder Bell']);
    expect(plants[0]?.advice[0]?.what).toBe('Take the first photo.');
    expect(plants[1]?.trend).toEqual([{ day: '2026-05-31', roundness: 91.5, roundnessPlusMinus: 2 }]);
  });

  it('are measured anew when the rim changes, and only then', async () => {
    const { send, addPlant, upload, services, measured } = await openBench();
    const plant = await addPlant({ rimMm: 130 });
    await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    await services.queue.whenIdle();
    await send('PATCH', `/api/plants/${plant.id}`, { name: 'Other' });
    await services.queue.whenIdle();
    expect(measured.map(({ rimMm }) => rimMm)).toEqual([130]);
    await send('PATCH', `/api/plants/${plant.id}`, { rimMm: 110 });
    await services.queue.whenIdle();
    expect(measured.map(({ rimMm }) => rimMm)).toEqual([130, 110]);
  });
});

describe('photos', () => {
  it('go from upload to measured, original untouched under its hash', async () => {
    const { send, addPlant, upload, services, homePath } = await openBench();
    const plant = await addPlant();
    const bytes = await cameraJpeg('2026:05:10 09:12:44');
    const sent = await upload(plant.id, [{ name: 'week 3.jpg', bytes }], { turnDeg: '45' });
    expect(sent.status).toBe(202);
    const entry = onlyEntry(sent);
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    await services.queue.whenIdle();
    const view = viewSchema.parse((await send('GET', `/api/views/${entry.view.id}`)).body);
    expect(view).toMatchObject({
      fileName: 'week 3.jpg',
      turnDeg: 45,
      takenAt: '2026-05-10T09:12:44',
      takenFrom: 'exif',
      widthPx: 640,
      heightPx: 480,
      state: 'measured',
      methodVersion: expect.stringMatching(/./),
    });
    expect(view.report).toMatchObject({ photo: 'week 3.jpg', turnDeg: 45, status: 'measured' });

    const [folder] = readdirSync(join(homePath, 'photos'));
    const [name] = readdirSync(join(homePath, 'photos', folder ?? ''));
    expect(name).toMatch(/^[0-9a-f]{64}\.jpg$/);
    expect(readFileSync(join(homePath, 'photos', folder ?? '', name ?? '')).equals(bytes)).toBe(true);
    expect(readdirSync(join(homePath, 'incoming'))).toEqual([]);

    const page = plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
    expect(page.sittings.map(({ day, views }) => [day, views.length])).toEqual([['2026-05-10', 1]]);
  });

  it('of one plant and day share a sitting, ordered by turn', async () => {
    const { send, addPlant, upload } = await openBench();
    const plant = await addPlant();
    await upload(plant.id, [{ name: 'b.jpg', bytes: await plantJpeg(2) }], {
      day: '2026-05-10',
      turnDeg: '90',
    });
    await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg(1) }], {
      day: '2026-05-10',
      turnDeg: '0',
    });
    await upload(plant.id, [{ name: 'c.heic', bytes: turnedHeic() }]);
    const { sittings } = plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
    expect(sittings.map(({ day, views }) => [day, views.map(({ fileName }) => fileName)])).toEqual([
      ['2026-05-10', ['a.jpg', 'b.jpg']],
      ['2026-04-12', ['c.heic']],
    ]);
  });

  it('without a camera day get the day of the upload, and say so', async () => {
    const { addPlant, upload, send } = await openBench();
    const plant = await addPlant();
    const entry = onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
    expect(entry).toMatchObject({ outcome: 'kept', view: { takenFrom: 'upload', takenAt: null } });
    const page = (await send('GET', `/api/plants/${plant.id}`)).body;
    expect(page.sittings[0].day).toBe('2026-06-01');
  });

  it('are each kept once', async () => {
    const { addPlant, upload, homePath } = await openBench();
    const first = await addPlant();
    const second = await addPlant({ name: 'Half Moon' });
    const bytes = await plantJpeg();
    const [a, b] = [
      { name: 'a.jpg', bytes },
      { name: 'copy of a.jpg', bytes },
    ];
    const both = await upload(first.id, [a, b], { day: '2026-05-10' });
    expect(both.body.photos.map(({ outcome }: { outcome: string }) => outcome)).toEqual(['kept', 'known']);
    expect(onlyEntry(await upload(second.id, [a]))).toMatchObject({
      outcome: 'known',
      plantId: first.id,
      detail: 'This photo is already with Evening Bramble, in the sitting of 10 May 2026. Nothing was added.',
    });
    expect(readdirSync(join(homePath, 'photos'), { recursive: true }).length).toBe(2);
  });

  it('move to another sitting with their day, and take a turn', async () => {
    const { addPlant, upload, send } = await openBench();
    const plant = await addPlant();
    const entry = onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    const path = `/api/views/${entry.view.id}`;
    const moved = await send('PATCH', path, { day: '2026-05-03', turnDeg: 135 });
    expect(moved.body).toMatchObject({ turnDeg: 135, takenFrom: 'grower' });
    const page = (await send('GET', `/api/plants/${plant.id}`)).body;
    expect(page.sittings.map(({ day }: { day: string }) => day)).toEqual(['2026-05-03']);
    expect((await send('PATCH', path, { turnDeg: null })).body.turnDeg).toBeNull();
    expect((await send('PATCH', path, { turnDeg: 360 })).status).toBe(422);
    expect((await send('PATCH', path, { day: '2026-02-30' })).body.errors).toEqual([
      { pointer: '/day', detail: 'Give a day as YYYY-MM-DD, for example 2026-03-08.' },
    ]);
  });

  it('are removed and brought back with their report', async () => {
    const { addPlant, upload, send, services, measured } = await openBench();
    const plant = await addPlant();
    const bytes = await plantJpeg();
    const entry = onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    await services.queue.whenIdle();
    const path = `/api/views/${entry.view.id}`;
    expect((await send('DELETE', path)).status).toBe(204);
    expect((await send('GET', path)).body.detail).toBe('This photo was removed. Bring it back first.');
    expect((await send('GET', `/api/plants/${plant.id}`)).body.sittings).toEqual([]);
    expect((await send('POST', `${path}/restore`)).body).toMatchObject({
      state: 'measured',
      report: { status: 'measured' },
    });
    // Sending the file again brings it back just so.
    await send('DELETE', path);
    expect(onlyEntry(await upload(plant.id, [{ name: 'again.jpg', bytes }]))).toMatchObject({
      outcome: 'kept',
      view: { id: entry.view.id },
    });
    expect(measured.length).toBe(1);
  });

  it('cannot be brought back beside themselves', async () => {
    const { addPlant, upload, send } = await openBench();
    const first = await addPlant();
    const second = await addPlant();
    const bytes = await plantJpeg();
    const entry = onlyEntry(await upload(first.id, [{ name: 'a.jpg', bytes }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    await send('DELETE', `/api/views/${entry.view.id}`);
    await upload(second.id, [{ name: 'a.jpg', bytes }]);
    const answer = await send('POST', `/api/views/${entry.view.id}/restore`);
    expect(answer.status).toBe(409);
    expect(answer.body.detail).toContain('remove that one first');
  });

  it('are served upright in three widths, without camera data or place', async () => {
    const { addPlant, upload, send, url } = await openBench();
    const plant = await addPlant();
    const bytes = await cameraJpeg('2026:05:10 09:12:44', { gps: true });
    expect(bytes.includes('Invented Camera Works')).toBe(true);
    const entry = onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    const { pictureUrl } = entry.view;
    for (const width of ['', '?width=320', '?width=800', '?width=1600']) {
      const picture = await send('GET', pictureUrl + width);
      expect(picture.headers.get('content-type')).toBe('image/jpeg');
      const jpeg = picture.body as Buffer;
      expect(jpeg.includes('Exif')).toBe(false);
      expect(jpeg.includes('Invented')).toBe(false);
    }
    const { default: sharp } = await import('sharp');
    const small = await sharp((await send('GET', `${pictureUrl}?width=320`)).body).metadata();
    expect([small.width, small.height, small.exif]).toEqual([320, 240, undefined]);
    expect((await send('GET', `${pictureUrl}?width=999`)).body.detail).toBe(
      'Ask for a width of 320, 800 or 1600.',
    );
    const asked = { headers: { accept: 'image/avif,image/webp,*/*;q=0.8' } };
    const webp = await fetch(`${url}${pictureUrl}?width=320`, asked);
    expect([webp.headers.get('content-type'), webp.headers.get('vary')]).toEqual([
      'image/webp',
      expect.stringContaining('Accept'),
    ]);
    const packed = Buffer.from(await webp.arrayBuffer());
    expect((await sharp(packed).metadata()).exif).toBeUndefined();
    expect(packed.length).toBeLessThan((await send('GET', `${pictureUrl}?width=320`)).body.length);
    const tag = (await send('GET', pictureUrl)).headers.get('etag') ?? '';
    const again = await fetch(url + pictureUrl, {
      headers: { 'if-none-match': tag, 'cache-control': 'max-age=0' },
    });
    expect(again.status).toBe(304);
  });

  it('are measured against the photo of the empty stand', async () => {
    const { addPlant, upload, send, services, measured, url } = await openBench();
    const plant = await addPlant();
    await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    const form = new FormData();
    form.append('photo', new Blob([new Uint8Array(await plantJpeg(9, { plantsAt: [] }))]), 'empty.jpg');
    const put = await send('PUT', `/api/plants/${plant.id}/empty-photo`, form);
    expect(put.body.emptyPhotoUrl).toBe(`/api/plants/${plant.id}/empty-photo`);
    const picture = await fetch(`${url}${put.body.emptyPhotoUrl}?width=320`);
    expect(picture.headers.get('content-type')).toBe('image/jpeg');
    await services.queue.whenIdle();
    expect(measured.at(-1)?.emptyPath).toMatch(/photos\/[0-9a-f]{2}\/[0-9a-f]{64}\.jpg$/);
    const gone = await send('DELETE', `/api/plants/${plant.id}/empty-photo`);
    expect(gone.body.emptyPhotoUrl).toBeNull();
    await services.queue.whenIdle();
    expect(measured.at(-1)?.emptyPath).toBeNull();
  });

  it('serve their canopy once it is measured', async () => {
    const { addPlant, upload, send, services } = await openBench();
    const plant = await addPlant();
    const entry = onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    expect(entry.view.maskUrl).toBeNull();
    await services.queue.whenIdle();
    const view = viewSchema.parse((await send('GET', `/api/views/${entry.view.id}`)).body);
    expect((await send('GET', view.maskUrl ?? '')).headers.get('content-type')).toBe('image/png');
  });

  it('are drawn anew should their upright copy be lost', async () => {
    const { addPlant, upload, send, homePath } = await openBench();
    const plant = await addPlant();
    const entry = onlyEntry(await upload(plant.id, [{ name: 'a.heic', bytes: turnedHeic() }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    const { rmSync } = await import('node:fs');
    rmSync(join(homePath, 'pictures'), { recursive: true });
    expect((await send('GET', `${entry.view.pictureUrl}?width=320`)).status).toBe(200);
    expect(existsSync(join(homePath, 'pictures'))).toBe(true);
  });
});

describe('the measuring queue', () => {
  it('drops a measurement whose facts changed under way, and takes it anew', async () => {
    let release: () => void = () => {};
    let held = new Promise<void>((resolve) => {
      release = resolve;
    });
    const bench = await openBench({
      measure: async (task) => {
        await held;
        return {
          ...sampleMeasurement(task),
          report: sampleReport(task.photoName, { notes: [`${task.rimMm}`] }),
        };
      },
    });
    const plant = await bench.addPlant({ rimMm: 130 });
    const entry = onlyEntry(await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    await bench.send('PATCH', `/api/plants/${plant.id}`, { rimMm: 110 });
    release();
    held = Promise.resolve();
    await bench.services.queue.whenIdle();
    const view = (await bench.send('GET', `/api/views/${entry.view.id}`)).body;
    expect(view.report.notes).toEqual(['110']);
    expect(bench.measured.map(({ rimMm }) => rimMm)).toEqual([130, 110]);
  });

  it('marks a photo whose measuring broke down, and measures it anew on request', async () => {
    let broken = true;
    const bench = await openBench({
      measure: async (task) => {
        if (broken) throw new Error('out of memory');
        return sampleMeasurement(task);
      },
    });
    const plant = await bench.addPlant();
    const entry = onlyEntry(await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    await bench.services.queue.whenIdle();
    const path = `/api/views/${entry.view.id}`;
    expect((await bench.send('GET', path)).body).toMatchObject({
      state: 'failed',
      failure: 'The program broke down while measuring this photo. The photo is safe; measure it again.',
      report: null,
    });
    broken = false;
    const again = await bench.send('POST', `${path}/measure`);
    expect([again.status, again.body.state, again.body.failure]).toEqual([202, 'received', null]);
    await bench.services.queue.whenIdle();
    expect((await bench.send('GET', path)).body.state).toBe('measured');
  });

  it('takes the newest photo first, and new ones before those measured anew', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    for (const [at, day] of ['2026-05-03', '2026-05-17', '2026-05-10'].entries()) {
      await bench.upload(plant.id, [{ name: `${day}.jpg`, bytes: await plantJpeg(at) }], { day });
    }
    await bench.services.queue.whenIdle();
    bench.measured.length = 0;
    await bench.send('PATCH', `/api/plants/${plant.id}`, { rimMm: 120 });
    await bench.services.queue.whenIdle();
    expect(bench.measured.map(({ photoName }) => photoName)).toEqual([
      '2026-05-17.jpg',
      '2026-05-10.jpg',
      '2026-05-03.jpg',
    ]);
  });

  it('tells every open screen as a view moves on', async () => {
    const { addPlant, upload, url, services } = await openBench();
    const plant = await addPlant();
    const stop = new AbortController();
    const events = await fetch(`${url}/api/events`, { signal: stop.signal });
    expect(events.headers.get('content-type')).toContain('text/event-stream');
    await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    await services.queue.whenIdle();
    let text = '';
    for await (const part of events.body ?? []) {
      text += Buffer.from(part as Uint8Array).toString('utf8');
      if (text.includes('"state":"measured"')) break;
    }
    stop.abort();
    const states = [...text.matchAll(/event: progress\ndata: (.+)\n\n/g)].map(
      ([, data]) => JSON.parse(data ?? '').state,
    );
    expect(states).toEqual(['received', 'measuring', 'measured']);
  });
});

describe('stops and notes', () => {
  it.each([
    ['stops', { day: '2026-03-01', depth: 'deep', note: 'all but two' }, { depth: 'tip' }],
    ['notes', { day: '2026-03-01', text: 'first bud' }, { text: 'first two buds' }],
  ])('%s are added, changed, removed and brought back', async (kind, form, change) => {
    const { addPlant, send } = await openBench();
    const plant = await addPlant();
    const added = await send('POST', `/api/plants/${plant.id}/${kind}`, form);
    expect(added.status).toBe(201);
    expect(added.body).toMatchObject({ ...form, plantId: plant.id });
    const path = `/api/${kind}/${added.body.id}`;
    expect((await send('PATCH', path, change)).body).toMatchObject({ ...form, ...change });
    const kept = async () => (await send('GET', `/api/plants/${plant.id}`)).body[kind].length;
    expect(await kept()).toBe(1);
    expect((await send('DELETE', path)).status).toBe(204);
    expect(await kept()).toBe(0);
    expect((await send('PATCH', path, change)).status).toBe(404);
    expect((await send('POST', `${path}/restore`)).body).toMatchObject(change);
    expect(await kept()).toBe(1);
    expect((await send('POST', `/api/plants/${plant.id}/${kind}`, { ...form, day: 'soon' })).status).toBe(
      422,
    );
  });
});

describe('what is not there', () => {
  it.each([
    ['GET', `/api/plants/${NO_ID}`, 'plant'],
    ['PATCH', `/api/plants/${NO_ID}`, 'plant'],
    ['GET', `/api/plants/${NO_ID}/empty-photo`, 'plant'],
    ['DELETE', `/api/plants/${NO_ID}/empty-photo`, 'plant'],
    ['POST', `/api/plants/${NO_ID}/stops`, 'plant'],
    ['POST', `/api/plants/${NO_ID}/notes`, 'plant'],
    ['GET', `/api/views/${NO_ID}`, 'photo'],
    ['PATCH', `/api/views/${NO_ID}`, 'photo'],
    ['DELETE', `/api/views/${NO_ID}`, 'photo'],
    ['POST', `/api/views/${NO_ID}/restore`, 'photo'],
    ['POST', `/api/views/${NO_ID}/measure`, 'photo'],
    ['GET', `/api/views/${NO_ID}/picture`, 'photo'],
    ['GET', `/api/views/${NO_ID}/mask`, 'photo'],
    ['DELETE', `/api/stops/${NO_ID}`, 'stop'],
    ['POST', `/api/stops/${NO_ID}/restore`, 'stop'],
    ['DELETE', `/api/notes/${NO_ID}`, 'note'],
    ['POST', `/api/notes/${NO_ID}/restore`, 'note'],
  ])('%s %s is a problem that names the %s', async (method, path, what) => {
    const { send } = await openBench();
    const answer = await send(method, path, method === 'GET' || method === 'DELETE' ? undefined : {});
    expect(answer.status).toBe(404);
    expect(answer.headers.get('content-type')).toContain('application/problem+json');
    expect(answer.body).toEqual({
      type: 'about:blank',
      title: 'Not Found',
      status: 404,
      detail: `There is no such ${what}. It may have been removed; go back to the bench.`,
      instance: path,
    });
  });

  it('is a problem under /api for any other address too', async () => {
    const { send } = await openBench();
    const answer = await send('GET', '/api/nothing/here?at=all');
    expect(answer.status).toBe(404);
    expect(answer.body.detail).toBe('There is nothing at GET /api/nothing/here.');
  });
});
