import { describe, expect, it } from 'vitest';
import { seasonFacts } from '../../../server/season/season-facts.ts';
import { openDatabase } from '../../../server/store/database.ts';
import { addNote } from '../../../server/store/notes.ts';
import { rememberingPlants } from '../../../server/store/remembering.ts';
import { addStop } from '../../../server/store/stops.ts';
import { addTurn } from '../../../server/store/turns.ts';
import { openBench, sampleMeasurement, sampleReport } from '../fixtures/open-bench.ts';
import { cameraJpeg } from '../fixtures/photos.ts';

const TURN = { day: '2026-05-30', facesLightDeg: 90, note: '' } as never;
const NOTE = { day: '2026-05-30', kind: 'note', text: 'A word.' } as never;

/** Two plants and a count of how often each was reckoned. */
async function counted() {
  const { services, addPlant, ...bench } = await openBench();
  const { db } = services;
  const [one, other] = [(await addPlant()).id, (await addPlant({ name: 'Alder Bell' })).id];
  const remembered = rememberingPlants<number>();
  let reckoned = 0;
  const ask = (plantId: string, asked = 'today') =>
    remembered(db, { plantId, asked: [asked] }, () => ++reckoned);
  return { ...bench, services, db, one, other, ask };
}

describe('what was reckoned of a plant', () => {
  it('is kept while nothing was written, and for the same question only', async () => {
    const { one, ask } = await counted();
    expect([ask(one), ask(one), ask(one, 'tomorrow')]).toEqual([1, 1, 2]);
  });

  it('is reckoned anew after a turn of that plant, the other plant’s is kept', async () => {
    const { db, one, other, ask } = await counted();
    expect([ask(one), ask(other)]).toEqual([1, 2]);
    addTurn(db, one, TURN);
    expect([ask(one), ask(other)]).toEqual([3, 2]);
  });

  it('is kept after a line of another plant’s log', async () => {
    const { db, one, other, ask } = await counted();
    expect([ask(one), ask(other)]).toEqual([1, 2]);
    addNote(db, one, NOTE);
    expect([ask(one), ask(other)]).toEqual([3, 2]);
  });

  it('is reckoned anew after a photo came, was measured and was removed', async () => {
    const { services, send, upload, one, other, ask } = await counted();
    expect([ask(one), ask(other)]).toEqual([1, 2]);
    await upload(one, [{ name: 'a.jpg', bytes: await cameraJpeg('2026:05:31 10:00:00') }]);
    await services.queue.whenIdle();
    expect([ask(one), ask(other)]).toEqual([3, 2]);
    const { sittings } = (await send('GET', `/api/plants/${one}`)).body;
    await send('DELETE', `/api/views/${sittings[0].views[0].id}`);
    expect([ask(one), ask(other)]).toEqual([4, 2]);
  });

  it('is not kept from within a transaction that may be undone', async () => {
    const { db, one, ask } = await counted();
    expect(ask(one)).toBe(1);
    const undone = db.transaction(() => {
      addTurn(db, one, TURN);
      expect(ask(one)).toBe(2);
      throw new Error('undone');
    });
    expect(undone).toThrow('undone');
    // What is undone has counted all the same.
    expect([ask(one), ask(one)]).toEqual([3, 3]);
    addTurn(db, one, TURN);
    expect(ask(one)).toBe(4);
  });

  it('is reckoned anew after something of its stand was written, of another stand not', async () => {
    const { send, one, ask } = await counted();
    const stands = ['Here', 'There'].map((name) => send('POST', '/api/stands', { name }));
    const [here, there] = (await Promise.all(stands)).map(({ body }) => body.id);
    await send('PATCH', `/api/plants/${one}`, { standId: here });
    expect(ask(one)).toBe(1);
    await send('PATCH', `/api/stands/${there}`, { lightSide: 'left' });
    expect(ask(one)).toBe(1);
    await send('PATCH', `/api/stands/${here}`, { lightSide: 'left' });
    expect(ask(one)).toBe(2);
  });

  it('is reckoned anew after another connection wrote', async () => {
    const { homePath, one, ask } = await counted();
    expect(ask(one)).toBe(1);
    const elsewhere = openDatabase(homePath);
    addNote(elsewhere, one, NOTE);
    elsewhere.close();
    await Promise.resolve();
    expect([ask(one), ask(one)]).toEqual([2, 2]);
  });

  it('rests on the same facts of all until a record of the kind, a show or a figure changes', async () => {
    const { db, one, other, send, services } = await counted();
    const facts = () => seasonFacts(db, services.today()).restsOn({ id: other, kind: 'regal' });
    const before = facts();
    addNote(db, one, NOTE);
    addStop(db, one, { day: '2026-01-10', depth: 'tip', note: '' } as never);
    expect(same(facts(), before)).toBe(true);
    addNote(db, one, { day: '2026-05-20', kind: 'full-bloom', text: '' } as never);
    const withRecord = facts();
    expect(same(withRecord, before)).toBe(false);
    await send('POST', '/api/shows', { name: 'Hall', day: '2026-07-01' });
    const withShow = facts();
    expect(same(withShow, withRecord)).toBe(false);
    await send('PUT', '/api/defaults/regal.tip.meanDays', { value: 100 });
    expect(same(facts(), withShow)).toBe(false);
  });
});

function same(some: readonly unknown[], others: readonly unknown[]): boolean {
  return some.length === others.length && some.every((one, at) => one === others[at]);
}

describe('the readings beside a measurement', () => {
  it('follow the newest measurement of each photo', async () => {
    const shares = [0.2, 0.3];
    const { services, addPlant, upload, send } = await openBench({
      measure: async (task) => ({
        ...sampleMeasurement(task),
        report: sampleReport(task.photoName, {
          flower: { share: shares.shift() ?? 0, plusMinus: 0.02, patchesMm2: null },
        }),
      }),
    });
    const { id } = await addPlant({ rimMm: 130 });
    await upload(id, [{ name: 'a.jpg', bytes: await cameraJpeg('2026:05:31 10:00:00') }]);
    await services.queue.whenIdle();
    const readings = () =>
      services.db
        .prepare('SELECT status, flower_share AS share, flower_plus_minus AS plusMinus FROM readings')
        .all();
    expect(readings()).toEqual([{ status: 'measured', share: 0.2, plusMinus: 0.02 }]);
    await send('PATCH', `/api/plants/${id}`, { rimMm: 110 });
    await services.queue.whenIdle();
    expect(readings()).toEqual([{ status: 'measured', share: 0.3, plusMinus: 0.02 }]);
  });
});
