import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { client } from '../server/fixtures/client.ts';
import { temporaryFolder } from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { canLayUnder, failingCalls } from './failing-calls.ts';
import { lookAtStore } from './kept-or-absent.ts';
import { anotherFile } from './kill-server.ts';
import { BARE, startServer } from './running-server.ts';

/** The calls that are let fail, one a round. RONDURE_STEPS=60 goes further. */
const STEPS = Number(process.env.RONDURE_STEPS ?? 30);

const sha256 = (bytes: Buffer) => createHash('sha256').update(bytes).digest('hex');

describe('every call to the system that writes or syncs may fail, the database’s too', () => {
  it.runIf(canLayUnder()).each(['EIO', 'ENOSPC'] as const)(
    'with %s, and each photo is kept or absent, also after a kill',
    { timeout: 300_000 },
    async (code) => {
      const home = temporaryFolder();
      const calls = failingCalls(home);
      let server = await startServer(home, { program: BARE, environment: calls.environment });
      let bench = client(server.url);
      const plant = await bench.addPlant();
      const jpeg = await plantJpeg(1, { width: 400, height: 300 });
      const told = { kept: 0, refused: 0 };
      const outcomes: { sha: string; kept: boolean; step: number }[] = [];
      for (let n = 1; n <= STEPS; n += 1) {
        calls.failOn(n, code);
        while (!calls.hasFailed()) {
          const bytes = anotherFile(jpeg);
          const { status, body } = await bench.upload(plant.id, [{ name: 'a.jpg', bytes }]);
          const kept = status === 202;
          if (kept) expect(body.photos[0].outcome).toMatch(/^(kept|known)$/);
          else {
            // SQLite tells a sync that failed as a fault of the disk, whatever the system said.
            expect(body.detail).toMatch(
              /^The disk of Rondure’s machine (is full|could not be read or written)/,
            );
            if (code === 'EIO') expect(status).toBe(500);
          }
          told[kept ? 'kept' : 'refused'] += 1;
          outcomes.push({ sha: sha256(bytes), kept, step: n });
        }
        calls.heal();
        const state = lookAtStore(home);
        expect(state, `step ${n}`).toMatchObject({
          rowsWithoutFile: 0,
          wrongHashes: 0,
          emptyFiles: 0,
          integrity: 'ok',
        });
        for (const { sha, kept, step } of outcomes) expect(state.whole.has(sha), `step ${step}`).toBe(kept);
        if (n % 10 > 0) continue;
        await server.end('SIGKILL');
        server = await startServer(home, { program: BARE, environment: calls.environment });
        bench = client(server.url);
        const after = lookAtStore(home);
        expect(after).toMatchObject({ rowsWithoutFile: 0, wrongHashes: 0, emptyFiles: 0, integrity: 'ok' });
        for (const { sha, kept, step } of outcomes)
          expect(after.whole.has(sha), `step ${step}, killed`).toBe(kept);
      }
      console.log(
        `${code} from the system on the n-th write or sync, n = 1 to ${STEPS}, ${calls.seen()} calls in all: ${told.kept} photos kept, ${told.refused} refused, none in between`,
      );
      await server.end('SIGTERM');
      expect(told.refused).toBeGreaterThan(5);
    },
  );
});
