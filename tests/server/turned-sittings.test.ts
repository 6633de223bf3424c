import { describe, expect, it } from 'vitest';
import type { SittingTask } from '../../server/measuring/join-sitting.ts';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import type { Sitting } from '../../server/schemas/sitting.ts';
import { hullSolidSchema } from '../../server/schemas/turned.ts';
import {
  type BenchOptions,
  openBench,
  sampleMeasurement,
  sampleReport,
  temporaryFolder,
} from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';
import { turnedReport } from './fixtures/turned-report.ts';

const DAY = '2026-05-31';

/** A plant with views at the turns given, all of one day, measured and joined. */
async function turnedBench(turns: readonly (number | null)[], options: BenchOptions = {}) {
  const bench = await openBench({ join: async () => turnedReport(), ...options });
  const { addPlant, upload, send, services } = bench;
  const plant = await addPlant();
  for (const [seed, turn] of turns.entries()) {
    const fields = { day: DAY, ...(turn === null ? {} : { turnDeg: String(turn) }) };
    await upload(plant.id, [{ name: `${turn}.jpg`, bytes: await plantJpeg(seed) }], fields);
  }
  await services.queue.whenIdle();
  const page = async () => plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
  const sitting = async () => (await page()).sittings[0] as Sitting;
  return { ...bench, plant, page, sitting };
}

/** The turns that a joining was given. */
const turnsOf = ({ views }: SittingTask) => views.map(({ report }) => report.turnDeg);

describe('the views of a sitting', () => {
  it('are joined once all are measured, in the order of their turns', async () => {
    const { sitting, joined } = await turnedBench([90, 0, 135, 45]);
    const { turned, turnedState, turnedViewIds, views } = await sitting();
    expect(turnedState).toBe('ready');
    expect(turned?.plan.lopsidedness?.azimuthDeg).toBe(90);
    expect(turnedViewIds).toEqual(views.map(({ id }) => id));
    expect(turnsOf(joined.at(-1) as SittingTask)).toEqual([0, 45, 90, 135]);
  });

  it('are not joined while there is one', async () => {
    const { sitting, joined, send } = await turnedBench([0]);
    expect(await sitting()).toMatchObject({ turned: null, turnedState: 'one-view', turnedViewIds: [] });
    expect(joined).toEqual([]);
    const refused = await send('GET', `/api/sittings/${(await sitting()).id}/hull`);
    expect(refused.status).toBe(404);
    expect(refused.body.detail).toContain('One photo shows no solid.');
  });

  it('are joined anew when a turn is corrected, a photo is removed, brought back or mended, and not else', async () => {
    const { sitting, joined, send, services, page } = await turnedBench([0, 45, 90]);
    const first = joined.length;
    const view = (await sitting()).views[1];
    const settled = async (what: () => Promise<unknown>) => {
      await what();
      await services.queue.whenIdle();
      return turnsOf(joined.at(-1) as SittingTask);
    };
    const path = `/api/views/${view?.id}`;
    expect(await settled(() => send('PATCH', path, { turnDeg: 135 }))).toEqual([0, 90, 135]);
    expect(await settled(() => send('DELETE', path))).toEqual([0, 90]);
    expect(await settled(() => send('POST', `${path}/restore`))).toEqual([0, 90, 135]);
    expect(joined.length).toBe(first + 3);
    const stroke = { kind: 'keep', widthPx: 9, pointsPx: [[9, 9]] };
    await settled(() => send('PUT', `${path}/strokes`, { strokes: [stroke] }));
    expect(joined.length).toBe(first + 4);
    await page();
    await settled(() => send('PATCH', path, { turnDeg: 135 }));
    expect(joined.length).toBe(first + 4);
    expect((await sitting()).turnedState).toBe('ready');
  });

  it('are joined in the sitting to which they move, and no longer in the old one', async () => {
    const { sitting, joined, send, services, page } = await turnedBench([0, 45, 90]);
    await send('PATCH', `/api/views/${(await sitting()).views[2]?.id}`, { day: '2026-05-30' });
    await services.queue.whenIdle();
    expect(turnsOf(joined.at(-1) as SittingTask)).toEqual([0, 45]);
    expect((await page()).sittings.map(({ turnedState }) => turnedState)).toEqual(['ready', 'one-view']);
  });

  it('keep their plan in sight while they are joined anew, as long as all its views are there', async () => {
    let joinings = 0;
    const join = async () => {
      joinings += 1;
      return joinings < 3 ? turnedReport() : new Promise<never>(() => {});
    };
    const { sitting, send, services } = await turnedBench([0, 45], { join });
    await send('PATCH', `/api/views/${(await sitting()).views[0]?.id}`, { turnDeg: 10 });
    await services.queue.whenIdle();
    const views = (await sitting()).views;
    await send('PATCH', `/api/views/${views[0]?.id}`, { turnDeg: 20 });
    expect(await sitting()).toMatchObject({ turnedState: 'measuring', turned: { plan: { directions: 4 } } });
    const hull = await send('GET', `/api/sittings/${(await sitting()).id}/hull`);
    expect(hull.body.detail).toContain('not joined yet');
    await send('DELETE', `/api/views/${views[1]?.id}`);
    expect(await sitting()).toMatchObject({ turnedState: 'one-view', turned: null });
  });

  it('tell every open screen how their joining goes', async () => {
    const bench = await openBench({ join: async () => turnedReport() });
    const told: string[] = [];
    bench.services.progress.listen((step) => {
      if ('sittingId' in step) told.push(step.turnedState);
    });
    const plant = await bench.addPlant();
    for (const turn of [0, 90]) {
      const files = [{ name: 'a.jpg', bytes: await plantJpeg(turn) }];
      await bench.upload(plant.id, files, { day: DAY, turnDeg: String(turn) });
    }
    await bench.services.queue.whenIdle();
    expect(told.slice(-2)).toEqual(['measuring', 'ready']);
  });

  it('that break the joining say so, and are joined again at the next start', async () => {
    const homePath = temporaryFolder();
    const { sitting } = await turnedBench([0, 90], {
      homePath,
      join: async () => {
        throw new Error('out of luck');
      },
    });
    expect(await sitting()).toMatchObject({ turnedState: 'failed', turned: null });
    const later = await openBench({ homePath, join: async () => turnedReport() });
    await later.services.queue.whenIdle();
    expect(later.joined.length).toBe(1);
    const last = await openBench({ homePath });
    await last.services.queue.whenIdle();
    expect(last.joined.length).toBe(0);
  });

  it('without a turn are left to the grower, who is told', async () => {
    const { sitting } = await turnedBench([0, null], {
      join: async ({ views }) => ({ ...turnedReport(), notes: [`${views.length} views`] }),
    });
    const { views } = await sitting();
    expect(views.map(({ turnDeg, turnFrom }) => [turnDeg, turnFrom])).toEqual([
      [null, null],
      [0, 'grower'],
    ]);
  });

  it('take the stand’s height of the lens along, and are joined anew when it changes', async () => {
    const bench = await openBench({ join: async () => turnedReport() });
    const { send, services, joined } = bench;
    const { body: stand } = await send('POST', '/api/stands', {
      name: 'Shelf',
      sinceDay: '2026-05-01',
      cameraHeightMm: 320,
    });
    const plant = await bench.addPlant({ standId: stand.id });
    for (const turn of [0, 90]) {
      const files = [{ name: 'a.jpg', bytes: await plantJpeg(turn) }];
      await bench.upload(plant.id, files, { day: DAY, turnDeg: String(turn) });
    }
    await services.queue.whenIdle();
    expect(joined.at(-1)?.cameraHeightMm).toBe(320);
    await send('PATCH', `/api/stands/${stand.id}`, { cameraHeightMm: 280, sinceDay: '2026-05-01' });
    await services.queue.whenIdle();
    expect(joined.at(-1)?.cameraHeightMm).toBe(280);
  });
});

describe('the turn of a photo', () => {
  const COLLAR: BenchOptions = {
    measure: async (task) => ({
      ...sampleMeasurement(task),
      report: sampleReport(task.photoName, { collar: { turnDeg: 44.72, plusMinusDeg: 1.5, marks: 9 } }),
    }),
  };

  it('is the collar’s until the grower tells one, and again when that is taken back', async () => {
    const { sitting, send, services } = await turnedBench([null], COLLAR);
    const view = async () => (await sitting()).views[0];
    expect(await view()).toMatchObject({ turnDeg: 44.7, turnFrom: 'collar' });
    const path = `/api/views/${(await view())?.id}`;
    expect((await send('PATCH', path, { turnDeg: 90 })).body).toMatchObject({ turnFrom: 'grower' });
    await services.queue.whenIdle();
    expect(await view()).toMatchObject({ turnDeg: 90, turnFrom: 'grower', report: { turnDeg: 90 } });
    await send('PATCH', path, { turnDeg: null });
    expect(await view()).toMatchObject({ turnDeg: 44.7, turnFrom: 'collar' });
  });

  it('is no longer the collar’s when a new measuring reads none', async () => {
    let reads = true;
    const { sitting, send, services } = await turnedBench([null], {
      measure: async (task) => {
        const collar = reads ? { turnDeg: 359.98, plusMinusDeg: 1.5, marks: 9 } : null;
        return { ...sampleMeasurement(task), report: sampleReport(task.photoName, { collar }) };
      },
    });
    // Rounded to the tenth it is the mark itself.
    expect((await sitting()).views[0]).toMatchObject({ turnDeg: 0, turnFrom: 'collar' });
    reads = false;
    await send('POST', `/api/views/${(await sitting()).views[0]?.id}/measure`);
    await services.queue.whenIdle();
    expect((await sitting()).views[0]).toMatchObject({ turnDeg: null, turnFrom: null });
  });
});

describe('the solid of a sitting', () => {
  const SOLID = {
    unit: 'mm',
    corners: [0, 0, 0, 100.5, 0, 0, 0, 100.5, 0],
    triangles: [0, 1, 2],
    heightOfRim: 0,
    rimRadius: 65,
  } as const;

  it('is made when it is asked for, kept, and made anew with the plan', async () => {
    let made = 0;
    const hull: BenchOptions['hull'] = async () => {
      made += 1;
      return { ...SOLID, corners: [...SOLID.corners], triangles: [...SOLID.triangles] };
    };
    const { sitting, send, services } = await turnedBench([0, 45, 90, 135], { hull });
    const path = `/api/sittings/${(await sitting()).id}/hull`;
    const answer = hullSolidSchema.parse((await send('GET', path)).body);
    expect(answer).toEqual({ ...SOLID, weakAzimuthDeg: 270, heavyAzimuthDeg: 90 });
    await send('GET', path);
    expect(made).toBe(1);
    await send('PATCH', `/api/views/${(await sitting()).views[0]?.id}`, { turnDeg: 7 });
    await services.queue.whenIdle();
    await send('GET', path);
    expect(made).toBe(2);
  });

  it('is refused with its reason where the photos do not close round the plant', async () => {
    const flat = turnedReport();
    const notes = ['One direction shows left and right only.'];
    const { sitting, send } = await turnedBench([0, 180], {
      join: async () => ({ ...flat, plan: { ...flat.plan, hull: null }, notes }),
    });
    const answer = await send('GET', `/api/sittings/${(await sitting()).id}/hull`);
    expect(answer.status).toBe(404);
    expect(answer.body.detail).toBe('One direction shows left and right only.');
  });
});
