import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { MOST_BYTES } from '../../server/intake/refused-photo.ts';
import { onlyEntry } from '../server/fixtures/client.ts';
import { openBench, type TestBench, temporaryFolder } from '../server/fixtures/open-bench.ts';
import { cameraJpeg, plantJpeg } from '../server/fixtures/photos.ts';
import { BAD_FILES } from './bad-files.ts';
import { begunUpload } from './begun-upload.ts';

const TABLES = [
  'photos',
  'plants',
  'stands',
  'stand_versions',
  'sittings',
  'views',
  'measurements',
  'stops',
  'notes',
];

/** Everything the store holds, in short: the rows of every table and every file beside the database. */
function storeImprint({ services, homePath }: TestBench): string {
  const rows = TABLES.map((table) => {
    const all = services.db.prepare(`SELECT * FROM ${table}`).all();
    return `${all.length} ${table} ${sha256(JSON.stringify(all))}`;
  });
  const files = readdirSync(homePath, { recursive: true, encoding: 'utf8' })
    .filter((name) => !name.startsWith('rondure.sqlite') && statSync(join(homePath, name)).isFile())
    .sort()
    .map((name) => [
      name,
      createHash('sha256')
        .update(readFileSync(join(homePath, name)))
        .digest('hex'),
    ]);
  return JSON.stringify({ rows, files });
}

function sha256(bytes: string | Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex').slice(0, 12);
}

describe('a bad file', () => {
  it.each(BAD_FILES.map((file) => [file.what, file] as const))(
    'that is %s is refused with its own sentence and leaves nothing behind',
    async (_, { name, type, bytes, sentence }) => {
      const bench = await openBench();
      const plant = await bench.addPlant();
      await bench.upload(plant.id, [{ name: 'good.jpg', bytes: await plantJpeg() }]);
      await bench.services.queue.whenIdle();
      const before = storeImprint(bench);
      const answer = await bench.upload(plant.id, [
        { name, bytes: await bytes(), ...(type ? { type } : {}) },
      ]);
      expect(answer.status).toBe(202);
      expect(onlyEntry(answer)).toEqual({ outcome: 'refused', fileName: name, detail: sentence });
      expect(storeImprint(bench)).toBe(before);
      expect((await bench.send('GET', '/api/bench')).status).toBe(200);
    },
  );

  it.each(BAD_FILES.map((file) => [file.what, file] as const))(
    'that is %s is refused as the empty photo of a stand, and the stand stays as it was',
    async (_, { name, type, bytes, sentence }) => {
      const bench = await openBench();
      const stand = (await bench.send('POST', '/api/stands', { name: 'Potting bench' })).body;
      const address = `/api/stands/${stand.id}/empty-photo`;
      const form = (file: Uint8Array, fileName: string, kind = '') => {
        const sent = new FormData();
        sent.append('photo', new Blob([new Uint8Array(file)], { type: kind }), fileName);
        return sent;
      };
      await bench.send('PUT', address, form(await plantJpeg(), 'good.jpg'));
      const before = storeImprint(bench);
      const answer = await bench.send('PUT', address, form(await bytes(), name, type));
      expect([answer.status, answer.body.detail]).toEqual([422, sentence]);
      expect(storeImprint(bench)).toBe(before);
    },
  );

  it('does not keep the good ones beside it from being kept', async () => {
    const { addPlant, upload } = await openBench();
    const plant = await addPlant();
    const answer = await upload(plant.id, [
      { name: 'a.jpg', bytes: await plantJpeg(1) },
      { name: 'text.jpg', bytes: Buffer.from('text') },
      { name: 'b.jpg', bytes: await plantJpeg(2) },
    ]);
    expect(answer.body.photos.map(({ outcome }: { outcome: string }) => outcome)).toEqual([
      'kept',
      'refused',
      'kept',
    ]);
  });

  it('is refused as photo of the empty stand, which stays as it was', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const form = new FormData();
    form.append('photo', new Blob(['text']), 'empty.jpg');
    const before = storeImprint(bench);
    const answer = await bench.send('PUT', `/api/plants/${plant.id}/empty-photo`, form);
    expect([answer.status, answer.body.detail.slice(0, 17)]).toEqual([422, 'This file is text']);
    expect(storeImprint(bench)).toBe(before);
  });
});

describe('an odd but sound file', () => {
  it('is known by its content, whatever its name and type say', async () => {
    const { addPlant, upload } = await openBench();
    const plant = await addPlant();
    const entry = onlyEntry(
      await upload(plant.id, [{ name: 'notes.txt', bytes: await plantJpeg(), type: 'text/plain' }]),
    );
    expect(entry.outcome).toBe('kept');
  });

  it('with a nonsense camera date gets the day of the upload', async () => {
    const { addPlant, upload } = await openBench();
    const plant = await addPlant();
    const bytes = await cameraJpeg('2026:13:45 99:99:99');
    expect(onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes }]))).toMatchObject({
      outcome: 'kept',
      view: { takenFrom: 'upload', takenAt: null },
    });
  });

  it('without a camera date gets the day on which it was chosen, however long it waited for a network', async () => {
    const { addPlant, upload } = await openBench({ today: () => '2026-06-05' });
    const plant = await addPlant();
    const told = { chosenDay: '2026-06-01' };
    const bare = onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg(1) }], told));
    expect(bare).toMatchObject({ outcome: 'kept', view: { takenFrom: 'upload' } });
    const dated = await cameraJpeg('2026:05:30 09:00:00');
    expect(onlyEntry(await upload(plant.id, [{ name: 'b.jpg', bytes: dated }], told))).toMatchObject({
      outcome: 'kept',
      view: { takenFrom: 'exif', takenAt: '2026-05-30T09:00:00' },
    });
  });

  it('keeps the readable part of a hostile name', async () => {
    const { addPlant, upload } = await openBench();
    const plant = await addPlant();
    const names = ['../../etc/passwd', 'C:\\photos\\Größe 3.jpg', `${'x'.repeat(500)}.jpg`, '<b>.jpg'];
    const files = await Promise.all(
      names.map(async (name, seed) => ({ name, bytes: await plantJpeg(seed) })),
    );
    const answer = await upload(plant.id, files);
    expect(answer.body.photos.map(({ fileName }: { fileName: string }) => fileName)).toEqual([
      'passwd',
      'Größe 3.jpg',
      `${'x'.repeat(116)}.jpg`,
      '<b>.jpg',
    ]);
  });
});

describe('a bad upload', () => {
  it('larger than the limit is refused whole with 413', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const before = storeImprint(bench);
    const answer = await bench.upload(plant.id, [
      { name: 'a.jpg', bytes: await plantJpeg() },
      { name: 'huge.jpg', bytes: new Uint8Array(MOST_BYTES + 1) },
    ]);
    expect(answer.status).toBe(413);
    expect(answer.body.detail).toContain('A file is larger than 40 MB, so nothing of this upload was kept.');
    expect(storeImprint(bench)).toBe(before);
  });

  it('of too many files is refused whole with 413', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const before = storeImprint(bench);
    const files = Array.from({ length: 101 }, (_, at) => ({ name: `${at}.jpg`, bytes: Buffer.from('x') }));
    const answer = await bench.upload(plant.id, files);
    expect(answer.status).toBe(413);
    expect(answer.body.detail).toContain('too many files at once');
    expect(storeImprint(bench)).toBe(before);
  });

  it('without a file, in another field, or not multipart says what to send', async () => {
    const { addPlant, upload, send } = await openBench();
    const plant = await addPlant();
    const none = await upload(plant.id, []);
    expect([none.status, none.body.detail]).toEqual([
      400,
      'No photo was sent. Send it as multipart/form-data in the field "photos".',
    ]);
    const form = new FormData();
    form.append('pictures', new Blob(['x']), 'a.jpg');
    const other = await send('POST', `/api/plants/${plant.id}/photos`, form);
    expect([other.status, other.body.detail.slice(0, 41)]).toEqual([
      400,
      'Files are not taken in the field "picture',
    ]);
    const json = await send('POST', `/api/plants/${plant.id}/photos`, { photos: [] });
    expect([json.status, json.body.detail.slice(0, 17)]).toEqual([400, 'No photo was sent']);
  });

  it('with a wrong day or turn keeps no photo', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const before = storeImprint(bench);
    const photo = { name: 'a.jpg', bytes: await plantJpeg() };
    const day = await bench.upload(plant.id, [photo], { day: 'Sunday' });
    expect([day.status, day.body.errors[0].pointer]).toEqual([422, '/day']);
    const turn = await bench.upload(plant.id, [photo], { turnDeg: '-5' });
    expect([turn.status, turn.body.errors[0].pointer]).toEqual([422, '/turnDeg']);
    expect(storeImprint(bench)).toBe(before);
  });

  it('to a plant that is not there takes no file in', async () => {
    const bench = await openBench();
    const answer = await bench.upload('00000000-0000', [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    expect(answer.status).toBe(404);
    expect(readdirSync(bench.services.home.incoming)).toEqual([]);
  });

  it('broken off half-way leaves nothing behind and the server up', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const before = storeImprint(bench);
    const { port } = new URL(bench.url);
    await new Promise<void>((resolve) => {
      const socket = connect(Number(port), '127.0.0.1', () => {
        socket.write(begunUpload(plant.id, port));
        setTimeout(() => socket.destroy(), 100);
      });
      socket.on('close', () => resolve());
    });
    for (let wait = 0; wait < 50 && storeImprint(bench) !== before; wait += 1) {
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
    expect(storeImprint(bench)).toBe(before);
    expect((await bench.send('GET', '/api/bench')).status).toBe(200);
  });

  it('with malformed JSON or too much of it is a problem, never a stack', async () => {
    const { url } = await openBench();
    const post = async (body: string, type = 'application/json') => {
      const response = await fetch(`${url}/api/plants`, {
        method: 'POST',
        body,
        headers: { 'content-type': type },
      });
      return [response.status, ((await response.json()) as { detail: string }).detail];
    };
    expect(await post('{"name":')).toEqual([400, 'The JSON that was sent is malformed.']);
    expect(await post(`"${'x'.repeat(100_000)}"`)).toEqual([413, 'That is more text than a form may hold.']);
    expect(await post('name=x', 'text/plain')).toEqual([
      415,
      'Send the fields as JSON, with the content type application/json.',
    ]);
  });
});

describe('a full disk', () => {
  it.each(['ENOSPC', 'EDQUOT', 'SQLITE_FULL'])('(%s) is answered with 507 and plain words', async (code) => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const full = Object.assign(new Error('no space left'), { code });
    Object.assign(bench.services, { receive: () => Promise.reject(full) });
    const answer = await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    expect([answer.status, answer.body.detail]).toEqual([
      507,
      'The disk of Rondure’s machine is full, so nothing of this was kept. Make room there, then send it again.',
    ]);
    expect((await bench.send('GET', `/api/plants/${plant.id}`)).status).toBe(200);
  });
});

describe('a stop at the worst moment', () => {
  it('leaves half-written files where the next start sweeps them away', async () => {
    const homePath = temporaryFolder();
    const first = await openBench({ homePath });
    const plant = await first.addPlant();
    await first.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]);
    writeFileSync(join(homePath, 'incoming', 'half.upload'), 'half a photo');
    writeFileSync(join(homePath, 'incoming', 'half.part'), 'half a picture');
    const second = await openBench({ homePath });
    expect(readdirSync(join(homePath, 'incoming'))).toEqual([]);
    expect((await second.send('GET', `/api/plants/${plant.id}`)).body.sittings.length).toBe(1);
  });

  it('after the original was kept and before its row lets the photo be sent again', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const bytes = await plantJpeg();
    const hash = createHash('sha256').update(bytes).digest('hex');
    const { mkdirSync } = await import('node:fs');
    mkdirSync(join(bench.homePath, 'photos', hash.slice(0, 2)));
    writeFileSync(join(bench.homePath, 'photos', hash.slice(0, 2), `${hash}.jpg`), bytes);
    expect(onlyEntry(await bench.upload(plant.id, [{ name: 'a.jpg', bytes }])).outcome).toBe('kept');
  });

  it('eight requests with the same photo at once keep it once: one row, one file', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const photo = { name: 'a.jpg', bytes: await plantJpeg() };
    const answers = await Promise.all(Array.from({ length: 8 }, () => bench.upload(plant.id, [photo])));
    const outcomes = answers.map((answer) => onlyEntry(answer).outcome).sort();
    expect(outcomes).toEqual(['kept', ...Array(7).fill('known')]);
    const views = bench.services.db.prepare('SELECT count(*) AS n FROM views').get();
    expect(views).toEqual({ n: 1 });
    const originals = readdirSync(join(bench.homePath, 'photos'), { recursive: true, encoding: 'utf8' });
    expect(originals.filter((name) => name.endsWith('.jpg'))).toHaveLength(1);
    console.info(`the same photo 8 times at once: ${outcomes.join(', ')}; 1 row, 1 file`);
    expect(readdirSync(join(bench.homePath, 'incoming'))).toEqual([]);
  });
});
