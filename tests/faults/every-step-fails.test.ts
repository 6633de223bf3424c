import { createHash } from 'node:crypto';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { openBench, type TestBench } from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { failingDisk } from './failing-disk.ts';
import { lookAtStore } from './kept-or-absent.ts';
import { anotherFile } from './kill-server.ts';
import { canMount, smallDisk } from './small-disk.ts';

const FULL =
  'The disk of Rondure’s machine is full, so nothing of this was kept. Make room there, then send it again.';

/** The steps that are let fail, one a round; keeping one photo takes some fourteen. RONDURE_STEPS=60 goes further. */
const STEPS = Number(process.env.RONDURE_STEPS ?? 20);

const sha256 = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

/** Uploads a photo; whether it was answered as kept. Every other answer must be a refusal in words. */
async function isKept(bench: TestBench, plantId: string, bytes: Buffer): Promise<boolean> {
  const answer = await bench.upload(plantId, [{ name: 'a.jpg', bytes }]);
  if (answer.status === 202) {
    expect(answer.body.photos[0].outcome).toMatch(/^(kept|known)$/);
    return true;
  }
  expect([500, 507]).toContain(answer.status);
  expect(answer.body.detail).toMatch(/^[A-Z].{20,}\.$/);
  return false;
}

const MOST_PHOTOS = 90;

describe('every step of keeping a photo may fail', () => {
  it.each(['EIO', 'ENOSPC'] as const)('with %s, and each photo is kept or absent', async (code) => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const jpeg = await plantJpeg(1, { width: 400, height: 300 });
    const disk = await failingDisk(bench.homePath);
    const told = { kept: 0, refused: 0 };
    for (let n = 1; n <= STEPS; n += 1) {
      disk.failOn(n, code);
      const outcomes: { sha: string; kept: boolean }[] = [];
      while (!disk.hasFailed()) {
        const bytes = anotherFile(jpeg);
        outcomes.push({ sha: sha256(bytes), kept: await isKept(bench, plant.id, bytes) });
      }
      await bench.services.queue.whenIdle();
      disk.heal();
      const state = lookAtStore(bench.homePath);
      expect(state).toMatchObject({ rowsWithoutFile: 0, filesWithoutRow: 0, wrongHashes: 0, emptyFiles: 0 });
      expect(state.integrity).toBe('ok');
      for (const { sha, kept } of outcomes) expect(state.whole.has(sha), `step ${n}`).toBe(kept);
      told.kept += outcomes.filter(({ kept }) => kept).length;
      told.refused += outcomes.filter(({ kept }) => !kept).length;
    }
    expect(readdirSync(bench.services.home.incoming)).toEqual([]);
    console.log(
      `${code} on the n-th step, n = 1 to ${STEPS}: ${told.kept} photos kept, ${told.refused} refused, none in between`,
    );
    expect(told.refused).toBeGreaterThan(5);
    expect((await bench.send('GET', `/api/plants/${plant.id}`)).body.sittings).toHaveLength(1);
  });

  it('in the database too: without room for another page, each photo is kept or absent', async () => {
    const bench = await openBench();
    const plant = await bench.addPlant();
    const jpeg = await plantJpeg(1, { width: 400, height: 300 });
    const { db } = bench.services;
    await isKept(bench, plant.id, anotherFile(jpeg));
    const told = { kept: 0, refused: 0 };
    // Free pages within the file take some photos before it must grow.
    for (let n = 0; n < 12 || (told.refused === 0 && n < MOST_PHOTOS); n += 1) {
      // What was measured meanwhile waits for room too.
      db.pragma('max_page_count = 1000000');
      await bench.services.queue.whenIdle();
      db.pragma(`max_page_count = ${Number(db.pragma('page_count', { simple: true })) + (n % 3)}`);
      const bytes = anotherFile(jpeg);
      const kept = await isKept(bench, plant.id, bytes);
      const state = lookAtStore(bench.homePath);
      expect(state).toMatchObject({ rowsWithoutFile: 0, filesWithoutRow: 0, integrity: 'ok' });
      expect(state.whole.has(sha256(bytes))).toBe(kept);
      told[kept ? 'kept' : 'refused'] += 1;
      expect((await bench.send('GET', `/api/plants/${plant.id}`)).status).toBe(200);
    }
    console.log(`SQLITE_FULL: ${told.kept} photos kept, ${told.refused} refused, none in between`);
    expect(told.refused).toBeGreaterThan(0);
  });

  it.runIf(canMount())(
    'on a disk that stays full: 507 in plain words, nothing empty, reading and deleting still work',
    async () => {
      const bench = await openBench({ homePath: smallDisk() });
      const plant = await bench.addPlant();
      const photo = await plantJpeg(1, { width: 1200, height: 900 });
      const views: string[] = [];
      let refusal = { status: 0, body: { detail: '' } };
      for (let k = 0; k < 400 && refusal.status === 0; k += 1) {
        const answer = await bench.upload(plant.id, [{ name: 'a.jpg', bytes: anotherFile(photo) }]);
        if (answer.status === 202) views.push(answer.body.photos[0].view.id);
        else refusal = answer;
      }
      expect([refusal.status, refusal.body.detail]).toEqual([507, FULL]);
      await bench.services.queue.whenIdle();
      const state = lookAtStore(bench.homePath);
      expect(state).toMatchObject({ rowsWithoutFile: 0, filesWithoutRow: 0, wrongHashes: 0, emptyFiles: 0 });
      expect([state.whole.size, state.integrity]).toEqual([views.length, 'ok']);
      expect((await bench.send('GET', '/api/bench')).status).toBe(200);
      expect((await bench.send('GET', `/api/views/${views[0]}/picture`)).status).toBe(200);
      expect((await bench.send('DELETE', `/api/views/${views[0]}`)).status).toBe(204);
      const { sittings } = (await bench.send('GET', `/api/plants/${plant.id}`)).body;
      expect(sittings[0].views).toHaveLength(views.length - 1);
      await bench.send('POST', '/api/keeping/backups');
      await bench.services.keeping.whenIdle();
      expect((await bench.send('GET', '/api/keeping')).body.failure).toMatch(
        /^The disk of .* is full\. Make room/,
      );
      expect(readdirSync(join(bench.homePath, 'backups'))).toEqual([]);
      console.log(`a full disk of 20 MB: ${views.length} photos kept, then 507; one read, one deleted`);
    },
  );
});
