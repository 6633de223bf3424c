import { describe, expect, it } from 'vitest';
import { METHOD_VERSION } from '../../core/method-version.ts';
import { type RemeasuringAnswer, remeasuringSchema } from '../../server/schemas/remeasuring.ts';
import { OLD, oldStore, RIM, STROKE, turnstile } from './fixtures/old-store.ts';
import {
  openBench,
  sampleMeasurement,
  sampleReport,
  type TestBench,
  temporaryFolder,
} from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';

async function progressOf({ send }: TestBench): Promise<RemeasuringAnswer> {
  const { status, body } = await send('GET', '/api/keeping/remeasuring');
  expect(status).toBe(200);
  return remeasuringSchema.parse(body);
}

/** Each photo's method and roundness, which the older method gave as 91.5 and the new one gives as 77. */
async function numbersOf({ send }: TestBench, viewIds: readonly string[]) {
  const views = await Promise.all(viewIds.map(async (id) => (await send('GET', `/api/views/${id}`)).body));
  return views.map(({ state, methodVersion, report }) => [state, methodVersion, report.roundness.score]);
}
const OLD_NUMBERS = ['measured', OLD, 91.5];
const NEW_NUMBERS = ['measured', METHOD_VERSION, 77];

describe('photos measured by an older method', () => {
  it('are measured anew behind the rest: progress rises, a stop leaves each old or new, and it goes on', async () => {
    const store = await oldStore(6);
    const gate = turnstile();
    const bench = await openBench({ homePath: store.homePath, measure: gate.measure, atOnce: 2 });
    const heard: RemeasuringAnswer[] = [];
    bench.services.remeasuring.listen((step) => heard.push(step));
    expect(await progressOf(bench)).toEqual({
      methodVersion: METHOD_VERSION,
      state: 'running',
      outdated: 6,
      total: 6,
      done: 0,
      brokeDown: 0,
      minutesLeft: null,
    });
    expect(await numbersOf(bench, store.viewIds)).toEqual(Array(6).fill(OLD_NUMBERS));
    const notesOf = async (k: number) =>
      (await bench.send('GET', `/api/views/${store.viewIds[k]}`)).body.report.notes;
    expect(await notesOf(0)).toContainEqual(expect.stringMatching(/^Measured by an older method/));
    for (const done of [1, 2]) {
      await gate.letOne();
      await expect.poll(async () => (await progressOf(bench)).done, { timeout: 10_000 }).toBe(done);
    }
    await expect.poll(gate.isWaiting).toBe(true);

    // A stop half-way, while the third is being measured: that one is finished, and no other is begun.
    expect((await bench.send('POST', '/api/keeping/remeasuring/stop')).body.state).toBe('stopped');
    await gate.letOne();
    await bench.services.queue.whenIdle();
    expect(await progressOf(bench)).toMatchObject({ state: 'stopped', done: 3, outdated: 3, total: 6 });
    expect(await numbersOf(bench, store.viewIds)).toEqual([
      ...Array(3).fill(NEW_NUMBERS),
      ...Array(3).fill(OLD_NUMBERS),
    ]);
    expect(await notesOf(0)).not.toContainEqual(expect.stringMatching(/^Measured by an older method/));
    expect(await notesOf(5)).toContainEqual(expect.stringMatching(/^Measured by an older method/));
    // The app still answers with both on one page.
    expect((await bench.send('GET', '/api/bench')).status).toBe(200);
    expect((await bench.send('GET', `/api/plants/${store.plantId}`)).status).toBe(200);

    // The next start leaves it stopped, and says where.
    bench.services.queue.close();
    const later = await openBench({ homePath: store.homePath, measure: gate.measure });
    await later.services.queue.whenIdle();
    expect(later.measured).toEqual([]);
    expect(await progressOf(later)).toMatchObject({ state: 'stopped', done: 3, outdated: 3, total: 6 });

    gate.letAll();
    expect((await later.send('POST', '/api/keeping/remeasuring/start')).status).toBe(202);
    await later.services.queue.whenIdle();
    expect(await numbersOf(later, store.viewIds)).toEqual(Array(6).fill(NEW_NUMBERS));
    expect(await progressOf(later)).toMatchObject({ state: 'idle', outdated: 0, total: 0 });
    expect(heard.map(({ done }) => done)).toEqual([1, 2, 2, 3]);
    console.log(`measured anew: 6 photos, stopped at 3, 3 old and 3 new in between, 6 new in the end`);
  });

  it('go on where a kill cut them off', async () => {
    const store = await oldStore(4);
    const gate = turnstile();
    const bench = await openBench({ homePath: store.homePath, measure: gate.measure });
    await gate.letOne();
    await expect.poll(gate.isWaiting, { timeout: 10_000 }).toBe(true);
    bench.services.queue.close();

    const later = await openBench({ homePath: store.homePath, measure: gate.measure });
    expect(await progressOf(later)).toMatchObject({ state: 'running', done: 1, total: 4 });
    gate.letAll();
    await later.services.queue.whenIdle();
    expect(later.measured.length).toBe(3);
    expect(await numbersOf(later, store.viewIds)).toEqual(Array(4).fill(NEW_NUMBERS));
  });

  it('keep what was set right by hand', async () => {
    const store = await oldStore(3);
    const bench = await openBench({ homePath: store.homePath });
    await bench.services.queue.whenIdle();
    const [turned, mended] = await Promise.all(
      store.viewIds.map(async (id) => (await bench.send('GET', `/api/views/${id}`)).body),
    );
    expect(turned).toMatchObject({ methodVersion: METHOD_VERSION, turnDeg: 90, turnFrom: 'grower' });
    expect(mended).toMatchObject({
      methodVersion: METHOD_VERSION,
      strokes: [STROKE],
      rimByHand: RIM,
      acceptedOutline: true,
    });
    // They are not only kept: the photo is measured with them.
    const [task] = bench.measured.filter(({ photoName }) => photoName === '1.jpg');
    expect(task).toMatchObject({ strokes: [STROKE], rimByHand: RIM });
  });

  it('let a fresh photo go first', async () => {
    const store = await oldStore(4);
    const gate = turnstile();
    const bench = await openBench({ homePath: store.homePath, measure: gate.measure });
    await bench.upload(store.plantId, [{ name: 'fresh.jpg', bytes: await plantJpeg(99) }], {
      day: '2026-05-30',
    });
    gate.letAll();
    await bench.services.queue.whenIdle();
    expect(bench.measured.map(({ photoName }) => photoName)).toEqual([
      '0.jpg',
      'fresh.jpg',
      '1.jpg',
      '2.jpg',
      '3.jpg',
    ]);
  });

  it('keep their old numbers where measuring anew breaks down, which is said, and can be tried again', async () => {
    const store = await oldStore(3);
    let isBroken = true;
    const bench = await openBench({
      homePath: store.homePath,
      measure: async (task) => {
        if (isBroken && task.photoName === '1.jpg') throw new Error('out of memory');
        return {
          ...sampleMeasurement(task),
          report: sampleReport(task.photoName, { roundness: { score: 77, plusMinus: 2 } }),
        };
      },
    });
    await bench.services.queue.whenIdle();
    expect(await progressOf(bench)).toMatchObject({ state: 'idle', outdated: 1, brokeDown: 1 });
    expect((await numbersOf(bench, store.viewIds))[1]).toEqual(OLD_NUMBERS);
    isBroken = false;
    await bench.send('POST', '/api/keeping/remeasuring/start');
    await bench.services.queue.whenIdle();
    expect(await progressOf(bench)).toMatchObject({ state: 'idle', outdated: 0, brokeDown: 0 });
  });

  it('that cannot be read any more are shown as such, with what to do', async () => {
    const store = await oldStore(2);
    const before = await openBench({ homePath: store.homePath });
    await before.services.queue.whenIdle();
    before.services.queue.close();
    const { db } = before.services;
    db.prepare(`UPDATE measurements SET method_version = '0', report = '{"form":"of before"}'`).run();
    before.services.remeasuring.stop();
    const { body } = await before.send('GET', `/api/views/${store.viewIds[0]}`);
    expect(body).toMatchObject({ state: 'failed', report: null });
    expect(body.failure).toMatch(/from an older version, in a form that this one cannot read/);
  });

  it('of a turned sitting are joined once, when all of them are measured anew', async () => {
    const homePath = temporaryFolder();
    const bench = await openBench({ homePath });
    const plant = await bench.addPlant();
    for (const turnDeg of ['0', '90']) {
      const bytes = await plantJpeg(1 + Number(turnDeg));
      await bench.upload(plant.id, [{ name: `${turnDeg}.jpg`, bytes }], { day: '2026-05-01', turnDeg });
    }
    await bench.services.queue.whenIdle();
    bench.services.queue.close();
    bench.services.db.prepare('UPDATE measurements SET method_version = ?').run(OLD);

    const gate = turnstile();
    const later = await openBench({ homePath, measure: gate.measure });
    await gate.letOne();
    await expect.poll(gate.isWaiting, { timeout: 10_000 }).toBe(true);
    expect(later.joined.length).toBe(0);
    await later.send('POST', '/api/keeping/remeasuring/stop');
    gate.letAll();
    await later.services.queue.whenIdle();
    expect(later.joined.length).toBe(1);
    const [sitting] = (await later.send('GET', `/api/plants/${plant.id}`)).body.sittings;
    expect(sitting.turnedState).toBe('ready');
  });
});
