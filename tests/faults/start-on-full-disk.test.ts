import { rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { client } from '../server/fixtures/client.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { startServer } from './running-server.ts';
import { canMount, smallDisk } from './small-disk.ts';

const TIMEOUT = { timeout: 120_000 };

/** Writes until not a byte is left; gives the room back when called. */
function fill(disk: string): () => void {
  const path = join(disk, 'something-else');
  const page = Buffer.alloc(4096);
  try {
    for (;;) writeFileSync(path, page, { flag: 'a' });
  } catch (fault) {
    expect((fault as NodeJS.ErrnoException).code).toBe('ENOSPC');
  }
  expect(statfsSync(disk).bavail).toBe(0);
  return () => rmSync(path);
}

/** A store on a small disk with one photo that was yet to be measured when the program ended. */
async function leftOnSmallDisk(how: 'SIGTERM' | 'SIGKILL') {
  const disk = smallDisk();
  const home = join(disk, 'home');
  const server = await startServer(home);
  const bench = client(server.url);
  const plant = await bench.addPlant();
  const bytes = await plantJpeg(1, { width: 2000, height: 1500 });
  const sent = await bench.upload(plant.id, [{ name: 'a.jpg', bytes }]);
  const viewId: string = sent.body.photos[0].view.id;
  await server.end(how);
  return { home, plantId: plant.id, viewId, giveBack: fill(disk) };
}

describe('a start on a full disk', () => {
  it.runIf(canMount())(
    'after a kill: shows what is there, refuses in words, and measures once there is room',
    TIMEOUT,
    async () => {
      const { home, plantId, viewId, giveBack } = await leftOnSmallDisk('SIGKILL');
      const server = await startServer(home);
      const bench = client(server.url);
      expect((await bench.send('GET', '/api/bench')).status).toBe(200);
      expect((await bench.send('GET', `/api/views/${viewId}/picture`)).status).toBe(200);
      const another = await bench.upload(plantId, [{ name: 'b.jpg', bytes: await plantJpeg(2) }]);
      expect([another.status, another.body.detail]).toEqual([507, expect.stringMatching(/is full/)]);
      const stateNow = async () => (await bench.send('GET', `/api/views/${viewId}`)).body.state;
      expect(await stateNow()).not.toBe('measured');
      giveBack();
      await expect.poll(stateNow, { timeout: 60_000 }).toBe('measured');
      expect((await server.end('SIGTERM')).code).toBe(0);
    },
  );

  it.runIf(canMount())(
    'after an orderly stop: says in one sentence what to do, and loses nothing',
    TIMEOUT,
    async () => {
      const { home, viewId, giveBack } = await leftOnSmallDisk('SIGTERM');
      await expect(startServer(home)).rejects.toThrow(
        /^The server ended before it served:\nThe disk that \S+ lies on is full, so the store cannot be opened\. Nothing is lost: make room there, then start Rondure again\.\n$/,
      );
      giveBack();
      const server = await startServer(home);
      const stateNow = async () => (await client(server.url).send('GET', `/api/views/${viewId}`)).body.state;
      await expect.poll(stateNow, { timeout: 60_000 }).toBe('measured');
      await server.end('SIGTERM');
    },
  );
});
