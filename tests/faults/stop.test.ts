import { createHash } from 'node:crypto';
import { connect } from 'node:net';
import { describe, expect, it } from 'vitest';
import { client } from '../server/fixtures/client.ts';
import { temporaryFolder } from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { begunUpload } from './begun-upload.ts';
import { lookAtStore } from './kept-or-absent.ts';
import { anotherFile } from './kill-server.ts';
import { startServer } from './running-server.ts';

/** Listens to the stream of events as an open page does; resolves when its first bytes have come. */
async function listenToEvents(url: string): Promise<{ ended: Promise<unknown> }> {
  const response = await fetch(`${url}/api/events`);
  const reader = response.body?.getReader();
  await reader?.read();
  const toItsEnd = async () => {
    for (;;) if ((await reader?.read())?.done ?? true) return;
  };
  return { ended: toItsEnd().catch(() => {}) };
}

describe('a server that is told to stop', () => {
  it('ends within two seconds with phones listening, and leaves a closed database', async () => {
    const home = temporaryFolder();
    const server = await startServer(home);
    const streams = await Promise.all([1, 2, 3].map(() => listenToEvents(server.url)));
    const { code, tookMs } = await server.end('SIGTERM');
    await Promise.all(streams.map(({ ended }) => ended));
    console.log(`SIGTERM with three open streams of events: ended in ${Math.round(tookMs)} ms`);
    expect(code).toBe(0);
    expect(tookMs).toBeLessThan(2000);
  });

  it('finishes an upload in flight or leaves nothing of it', { timeout: 120_000 }, async () => {
    const home = temporaryFolder();
    const jpeg = await plantJpeg(1, { width: 1600, height: 1200 });
    const told = { kept: 0, absent: 0, longestMs: 0 };
    let plantId = '';
    for (const waitMs of [0, 5, 40, 150]) {
      const server = await startServer(home);
      const { addPlant, upload } = client(server.url);
      plantId ||= (await addPlant()).id;
      const photos = [1, 2].map(() => anotherFile(jpeg));
      const sending = photos.map((bytes) =>
        upload(plantId, [{ name: 'a.jpg', bytes }]).then(
          ({ status, body }) => status === 202 && body.photos[0].outcome === 'kept',
          () => false,
        ),
      );
      await new Promise((resolve) => setTimeout(resolve, waitMs));
      const { code, tookMs } = await server.end('SIGTERM');
      told.longestMs = Math.max(told.longestMs, tookMs);
      expect(code).toBe(0);
      const acknowledged = await Promise.all(sending);
      const state = lookAtStore(home);
      expect(state).toMatchObject({
        rowsWithoutFile: 0,
        filesWithoutRow: 0,
        wrongHashes: 0,
        integrity: 'ok',
      });
      for (const [k, bytes] of photos.entries()) {
        const isThere = state.whole.has(createHash('sha256').update(bytes).digest('hex'));
        if (acknowledged[k]) expect(isThere).toBe(true);
        told[isThere ? 'kept' : 'absent'] += 1;
      }
    }
    console.log(
      `SIGTERM during uploads: ${told.kept} finished, ${told.absent} absent, none in between; ended in at most ${Math.round(told.longestMs)} ms`,
    );
    expect(told.longestMs).toBeLessThan(2000);
  });

  it('does not wait for one that stalls', async () => {
    const home = temporaryFolder();
    const server = await startServer(home);
    const plant = await client(server.url).addPlant();
    const { port } = new URL(server.url);
    const socket = connect(Number(port), '127.0.0.1');
    socket.on('error', () => {});
    socket.write(begunUpload(plant.id, port));
    await new Promise((resolve) => setTimeout(resolve, 200));
    const { code, tookMs } = await server.end('SIGTERM');
    console.log(`SIGTERM with a stalled upload: ended in ${Math.round(tookMs)} ms`);
    expect(code).toBe(0);
    expect(tookMs).toBeLessThan(2000);
    expect(lookAtStore(home)).toMatchObject({ filesWithoutRow: 0, emptyFiles: 0 });
  });
});

describe('a server told to restore a backup', () => {
  it('opens anew under its address with the store as it was', async () => {
    const home = temporaryFolder();
    const server = await startServer(home);
    const { addPlant, send, upload } = client(server.url);
    const plant = await addPlant({ name: 'Before' });
    await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg(3, { width: 400, height: 300 }) }]);
    await send('POST', '/api/keeping/backups');
    const idle = async () => {
      const answer = await send('GET', '/api/keeping').catch(() => null);
      return answer?.status === 200 && answer.body.underWay === null ? answer.body : null;
    };
    await expect
      .poll(idle, { timeout: 20_000 })
      .toMatchObject({ backups: [{ photoCount: 1 }], failure: null });
    const { backups } = (await send('GET', '/api/keeping')).body;
    await send('PATCH', `/api/plants/${plant.id}`, { name: 'After' });
    expect((await send('POST', `/api/keeping/backups/${backups[0].name}/restore`)).status).toBe(202);
    await expect.poll(async () => (await idle())?.replaced.length, { timeout: 30_000 }).toBe(1);
    expect((await send('GET', `/api/plants/${plant.id}`)).body.plant.name).toBe('Before');
    const state = lookAtStore(home);
    expect([state.whole.size, state.integrity]).toEqual([1, 'ok']);
    expect((await server.end('SIGTERM')).code).toBe(0);
  });
});
