import { describe, expect, it } from 'vitest';
import { client } from '../server/fixtures/client.ts';
import { OLD, oldStore } from '../server/fixtures/old-store.ts';
import {
  openBench,
  sampleMeasurement,
  type TestBench,
  temporaryFolder,
} from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { startServer } from './running-server.ts';

const stateOf = async ({ send }: Pick<TestBench, 'send'>, viewId: string) =>
  (await send('GET', `/api/views/${viewId}`)).body;

/** Measures all but the photo of that name, which is never done. */
const neverDone = (name: string) => (task: { photoName: string }) =>
  task.photoName === name ? new Promise<never>(() => {}) : Promise.resolve(sampleMeasurement(task as never));

/** Starts the program on `home` so many times, each time ending it while it measures the one photo there; that photo's view. */
async function endedWhileMeasuring(
  home: string,
  how: 'SIGTERM' | 'SIGKILL',
  starts: number,
): Promise<string> {
  // Large, so that the end meets its measuring.
  const bytes = await plantJpeg(1, { width: 3000, height: 2250 });
  let viewId = '';
  for (let start = 1; start <= starts; start += 1) {
    const server = await startServer(home);
    const bench = client(server.url);
    if (start === 1) {
      const sent = await bench.upload((await bench.addPlant()).id, [{ name: 'heavy.jpg', bytes }]);
      viewId = sent.body.photos[0].view.id;
    }
    await expect
      .poll(async () => (await stateOf(bench, viewId)).state, { timeout: 20_000, interval: 10 })
      .toBe('measuring');
    await server.end(how);
  }
  return viewId;
}

describe('a photo in whose midst the program ends', () => {
  it('is tried at three starts, then left aside in plain words, and measured when it is asked for', {
    timeout: 120_000,
  }, async () => {
    const home = temporaryFolder();
    const viewId = await endedWhileMeasuring(home, 'SIGKILL', 3);
    const server = await startServer(home);
    const bench = client(server.url);
    const aside = await stateOf(bench, viewId);
    expect(aside).toMatchObject({ state: 'failed', report: null });
    expect(aside.failure).toMatch(/^Rondure ended three times while it measured this photo/);
    await bench.send('POST', `/api/views/${viewId}/measure`);
    await expect.poll(async () => (await stateOf(bench, viewId)).state, { timeout: 60_000 }).toBe('measured');
    await server.end('SIGTERM');
  });

  it('stays aside at later starts, and holds up no other', async () => {
    const homePath = temporaryFolder();
    const first = await openBench({ homePath, measure: neverDone('heavy.jpg') });
    const plant = await first.addPlant();
    const sent = await first.upload(plant.id, [{ name: 'heavy.jpg', bytes: await plantJpeg(1) }]);
    const viewId = sent.body.photos[0].view.id;
    for (const expected of ['measuring', 'measuring', 'failed', 'failed', 'failed']) {
      const bench = await openBench({ homePath, measure: neverDone('heavy.jpg') });
      expect((await stateOf(bench, viewId)).state).toBe(expected);
    }
    const last = await openBench({ homePath, measure: neverDone('heavy.jpg') });
    const other = await last.upload(plant.id, [{ name: 'light.jpg', bytes: await plantJpeg(2) }]);
    await last.services.queue.whenIdle();
    expect((await stateOf(last, other.body.photos[0].view.id)).state).toBe('measured');
  });

  it('keeps the numbers of an older method, and the others are measured anew', async () => {
    const { homePath, viewIds } = await oldStore(3);
    const heavy = viewIds[0] ?? '';
    for (let start = 1; start <= 3; start++) await openBench({ homePath, measure: neverDone('0.jpg') });
    const bench = await openBench({ homePath, measure: neverDone('0.jpg') });
    await bench.services.queue.whenIdle();
    expect(await stateOf(bench, heavy)).toMatchObject({ state: 'measured', methodVersion: OLD });
    for (const viewId of viewIds.slice(1)) {
      expect((await stateOf(bench, viewId)).methodVersion).not.toBe(OLD);
    }
    expect((await bench.send('GET', '/api/keeping/remeasuring')).body).toMatchObject({
      brokeDown: 1,
      outdated: 1,
    });
  });
});

describe('an orderly stop', () => {
  it('is not counted against the photo that is being measured', { timeout: 120_000 }, async () => {
    const home = temporaryFolder();
    const viewId = await endedWhileMeasuring(home, 'SIGTERM', 4);
    const server = await startServer(home);
    expect((await stateOf(client(server.url), viewId)).state).not.toBe('failed');
    await server.end('SIGKILL');
  });
});
