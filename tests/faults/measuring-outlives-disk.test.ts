import { describe, expect, it } from 'vitest';
import { client } from '../server/fixtures/client.ts';
import { temporaryFolder } from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { canLayUnder, failingCalls } from './failing-calls.ts';
import { startServer } from './running-server.ts';

/** Calls that keeping a photo makes, or a few fewer: what fails later meets its measuring. */
const KEEPING = 26;
/** The calls that are let fail from then on, one a photo. */
const STEPS = Number(process.env.RONDURE_STEPS ?? 12);

describe('measuring while the disk fails', () => {
  it.runIf(canLayUnder())(
    'ends in numbers or in words, and the program goes on',
    { timeout: 300_000 },
    async () => {
      const home = temporaryFolder();
      const calls = failingCalls(home);
      const server = await startServer(home, { environment: calls.environment });
      let ended = false;
      server.process.once('exit', () => {
        ended = true;
      });
      const bench = client(server.url);
      const plant = await bench.addPlant();
      const told: Record<string, number> = { measured: 0, failed: 0 };
      for (let n = 1; n <= STEPS; n += 1) {
        const bytes = await plantJpeg(100 + n, { width: 800, height: 600 });
        calls.failOn(KEEPING + n, 'EIO');
        const sent = await bench.upload(plant.id, [{ name: `${n}.jpg`, bytes }]);
        if (sent.status !== 202) continue;
        const { id } = sent.body.photos[0].view;
        const stateNow = async () => (await bench.send('GET', `/api/views/${id}`)).body.state;
        await expect
          .poll(stateNow, { timeout: 20_000, message: `call ${n}, ended: ${ended}` })
          .toMatch(/^(measured|failed)$/);
        calls.heal();
        const state = await stateNow();
        told[state] = (told[state] ?? 0) + 1;
      }
      expect(ended).toBe(false);
      expect(told.measured).toBeGreaterThan(0);
      console.log(
        `EIO on the n-th call after the answer, n = 1 to ${STEPS}: ${told.measured} measured, ${told.failed} say why not, the program goes on`,
      );
      expect((await server.end('SIGTERM')).code).toBe(0);
    },
  );
});
