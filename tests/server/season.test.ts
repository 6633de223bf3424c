import { describe, expect, it } from 'vitest';
import type { PlantPage } from '../../server/schemas/pages.ts';
import type { Calendar, Defaults, PlantSeasonAnswer, PlantYear } from '../../server/schemas/season.ts';
import type { ShowList } from '../../server/schemas/show.ts';
import type { WorkList } from '../../server/schemas/work.ts';
import { openBench, type TestBench } from './fixtures/open-bench.ts';
import { cameraJpeg } from './fixtures/photos.ts';

const FUCHSIA = { name: 'Lantern', kind: 'fuchsia-single', variety: 'Pale Lantern', rimMm: 130 };
const SHOW = {
  name: 'Alder Vale Summer Show',
  day: '2026-08-13',
  place: 'Village hall',
  classes: [{ name: 'Class 12, one fuchsia', potMm: 120, widestMm: 400 }],
};

async function addPlant({ send }: TestBench, facts: object = {}): Promise<string> {
  return (await send('POST', '/api/plants', { ...FUCHSIA, ...facts })).body.id;
}

async function seasonOf({ send }: TestBench, plantId: string): Promise<PlantSeasonAnswer> {
  return (await send('GET', `/api/plants/${plantId}/season`)).body;
}

describe('a show', () => {
  it('rules the stops of the plants that are entered for it', async () => {
    const bench = await openBench();
    const plantId = await addPlant(bench);
    expect((await seasonOf(bench, plantId)).plan).toBeNull();
    const show = (await bench.send('POST', '/api/shows', SHOW)).body;
    const entered = await bench.send('PUT', `/api/plants/${plantId}/entries/${show.id}`, {
      classId: show.classes[0].id,
    });
    expect(entered.status).toBe(200);
    expect(entered.body.checks).toEqual([
      expect.objectContaining({ limit: 'pot', verdict: 'too large' }),
      expect.objectContaining({ limit: 'width', verdict: 'unknown' }),
    ]);
    const season = await seasonOf(bench, plantId);
    expect(season.plan?.showDay).toBe('2026-08-13');
    expect(season.plan?.last.lastDay).toBe('2026-06-08');
    expect(season.bloomDays.length).toBeGreaterThan(20);
    expect(season.work.map(({ kind }) => kind)).toContain('stop');
    const page = (await bench.send('GET', `/api/plants/${plantId}`)).body;
    expect(page.plant).toMatchObject({ showDay: '2026-08-13', showId: show.id });
    expect(page.advice.map(({ kind }: { kind: string }) => kind)).toContain('plan');
  });

  it('is made from a bare day, shared by plants of that day, and left again', async () => {
    const bench = await openBench();
    const one = await addPlant(bench, { showDay: '2026-06-20' });
    await addPlant(bench, { name: 'Other', showDay: '2026-06-20' });
    const list = async () => (await bench.send('GET', '/api/shows')).body as ShowList;
    const { shows } = await list();
    expect(shows.map(({ show, entries }) => [show.name, entries.length])).toEqual([
      ['Show on 20 June 2026', 2],
    ]);
    await bench.send('PATCH', `/api/plants/${one}`, { showDay: null });
    expect((await list()).shows[0]?.entries.map(({ plantName }) => plantName)).toEqual(['Other']);
    expect((await bench.send('GET', `/api/plants/${one}`)).body.plant.showDay).toBeNull();
  });

  it('gives way to the one the grower picks, and says what that does to the other', async () => {
    const bench = await openBench();
    const plantId = await addPlant(bench, { showDay: '2026-08-13' });
    const later = (await bench.send('POST', '/api/shows', { ...SHOW, name: 'Later', day: '2026-09-20' }))
      .body;
    await bench.send('PUT', `/api/plants/${plantId}/entries/${later.id}`, {});
    expect((await seasonOf(bench, plantId)).plan?.showDay).toBe('2026-08-13');
    await bench.send('PATCH', `/api/plants/${plantId}`, { aimShowId: later.id });
    const { plan, entries } = await seasonOf(bench, plantId);
    expect(plan?.showDay).toBe('2026-09-20');
    const [first, second] = entries;
    expect(first).toMatchObject({ isAim: false, effect: { showId: first?.show.id } });
    expect(first?.effect?.words).toContain('38 days earlier');
    expect(second).toMatchObject({ isAim: true, effect: null });
  });

  it('that is removed takes its plans with it, and brings them back', async () => {
    const bench = await openBench();
    const plantId = await addPlant(bench, { showDay: '2026-08-13' });
    const { showId } = (await bench.send('GET', `/api/plants/${plantId}`)).body.plant;
    expect((await bench.send('DELETE', `/api/shows/${showId}`)).status).toBe(204);
    expect((await seasonOf(bench, plantId)).plan).toBeNull();
    expect((await bench.send('POST', `/api/shows/${showId}/restore`)).status).toBe(200);
    expect((await seasonOf(bench, plantId)).plan?.showDay).toBe('2026-08-13');
  });

  it.each([
    [{ ...SHOW, name: ' ' }, 'Give the show a name.'],
    [{ ...SHOW, day: '2026-02-30' }, 'Give a day as YYYY-MM-DD, for example 2026-03-08.'],
    [
      { ...SHOW, classes: [{ name: 'A', widestMm: 4 }] },
      'A limit of less than 30 mm cannot be right; give millimetres.',
    ],
  ])('of %j is not taken', async (form, detail) => {
    const { send } = await openBench();
    const { status, body } = await send('POST', '/api/shows', form);
    expect([status, body.detail]).toEqual([422, detail]);
  });

  it('has no class that is not its own', async () => {
    const bench = await openBench();
    const plantId = await addPlant(bench);
    const show = (await bench.send('POST', '/api/shows', SHOW)).body;
    const { status, body } = await bench.send('PUT', `/api/plants/${plantId}/entries/${show.id}`, {
      classId: 'no-such-class',
    });
    expect([status, body.detail]).toEqual([
      422,
      'This show has no such class. Choose one of its classes, or none.',
    ]);
  });
});

describe('what a season taught', () => {
  it('moves the next plan: own records go before the default', async () => {
    let today = '2026-06-01';
    const bench = await openBench({ today: () => today });
    const plantId = await addPlant(bench, { showDay: '2026-08-13' });
    const before = (await seasonOf(bench, plantId)).plan;
    await bench.send('POST', `/api/plants/${plantId}/stops`, { day: '2026-06-06', depth: 'tip' });
    await bench.send('POST', `/api/plants/${plantId}/notes`, { day: '2026-08-25', kind: 'full-bloom' });
    today = '2026-09-01';
    await bench.send('PATCH', `/api/plants/${plantId}`, { showDay: '2027-08-13' });
    const { plan, records } = await seasonOf(bench, plantId);
    expect(records).toEqual([expect.objectContaining({ stopDay: '2026-06-06', fullBloomDay: '2026-08-25' })]);
    expect(plan?.planned.shares.own).toBeGreaterThan(0.3);
    expect(plan?.planned.meanDays).toBeGreaterThan(before?.planned.meanDays ?? 0);
    expect(plan?.last.daysBeforeShow).toBeGreaterThan(before?.last.daysBeforeShow ?? 0);
    const asides = { fromDay: '2026-06-01', toDay: '2026-08-31', text: 'Cold and dark.', setsAside: true };
    expect((await bench.send('POST', '/api/season-notes', asides)).status).toBe(201);
    const set = (await seasonOf(bench, plantId)).plan;
    expect(set?.planned.shares.own).toBe(0);
    expect(set?.planned.leftOut[0]?.leftOut).toBe('Set aside by your note: Cold and dark.');
  });

  it('is told when the stop was done late', async () => {
    const bench = await openBench({ today: () => '2026-06-20' });
    const plantId = await addPlant(bench, { showDay: '2026-08-13' });
    await bench.send('POST', `/api/plants/${plantId}/stops`, { day: '2026-06-17', depth: 'tip' });
    const { plan } = await seasonOf(bench, plantId);
    expect(plan?.restsOn).toBe('written');
    expect(plan?.steps.at(-1)).toMatchObject({ state: 'done', doneOn: '2026-06-17', offDays: 9 });
    expect(plan?.effect?.chanceLate).toBeGreaterThan(0.2);
  });
});

describe('the table of stops', () => {
  it('takes figures of the grower’s own and gives the default back', async () => {
    const bench = await openBench();
    const plantId = await addPlant(bench, { showDay: '2026-08-13' });
    const put = (value: number | null) =>
      bench.send('PUT', '/api/defaults/fuchsia-single.tip.meanDays', { value });
    const own = (await put(80)).body as Defaults;
    const figure = own.figures.find(({ key }) => key === 'fuchsia-single.tip.meanDays');
    expect(figure).toMatchObject({ isOwn: true, figure: { value: 80, standing: 'grower' } });
    expect((await seasonOf(bench, plantId)).plan?.last.lastDay.slice(0, 7)).toBe('2026-05');
    expect(((await put(null)).body as Defaults).figures.some(({ isOwn }) => isOwn)).toBe(false);
    expect((await seasonOf(bench, plantId)).plan?.last.lastDay).toBe('2026-06-08');
    const wrong = await put(700);
    expect([wrong.status, wrong.body.detail]).toEqual([
      422,
      'Give days from a tip stop to full bloom as a number from 14 to 400.',
    ]);
  });
});

describe('work', () => {
  it('of turning goes to the light ledger where the side is known, else to the log, and is done by both', async () => {
    const bench = await openBench();
    const ids = [await addPlant(bench), await addPlant(bench, { name: 'Second' })];
    const [first] = ids as [string, string];
    await bench.send('POST', `/api/plants/${first}/turns`, { day: '2026-05-20', facesLightDeg: 300 });
    const record = { type: 'note', kind: 'turned', day: '2026-06-01' };
    const { status, body } = await bench.send('POST', '/api/records', { plantIds: ids, record });
    expect([status, body.ids.length, body.turnIds.length]).toEqual([201, 1, 1]);
    const page = await bench.send('GET', `/api/plants/${first}`);
    expect(page.body.turns[0]).toMatchObject({ id: body.turnIds[0], day: '2026-06-01', facesLightDeg: 30 });
    expect(page.body.notes).toEqual([]);
    const turns = async () =>
      ((await bench.send('GET', '/api/work')).body as WorkList).work.filter(({ kind }) => kind === 'turn');
    expect((await turns()).map(({ plantName, day }) => [plantName, day])).toEqual([
      ['Lantern', '2026-06-08'],
      ['Second', '2026-06-08'],
      ['Lantern', '2026-06-15'],
      ['Second', '2026-06-15'],
    ]);
    await bench.send('DELETE', `/api/turns/${body.turnIds[0]}`);
    await bench.send('DELETE', `/api/notes/${body.ids[0]}`);
    expect((await turns()).some(({ day }) => day <= '2026-06-01')).toBe(true);
  });

  it('of many plants is done, moved and skipped at once, and taken back', async () => {
    const bench = await openBench();
    const ids = [await addPlant(bench), await addPlant(bench, { name: 'Second' })];
    const stop = { type: 'stop', day: '2026-06-01', depth: 'deep' };
    const written = await bench.send('POST', '/api/records', { plantIds: ids, record: stop });
    expect(written.status).toBe(201);
    expect(written.body.ids).toHaveLength(2);
    const list = async () => (await bench.send('GET', '/api/work')).body as WorkList;
    const dry = (await list()).work.filter(({ kind }) => kind === 'keep-dry');
    expect(dry.map(({ plantName, day, state }) => [plantName, day, state])).toEqual([
      ['Lantern', '2026-06-01', 'due'],
      ['Second', '2026-06-01', 'due'],
    ]);
    const [first, second] = dry as [(typeof dry)[number], (typeof dry)[number]];
    const words = [
      { plantId: first.plantId, word: { key: first.key, said: 'done', day: '2026-06-01' } },
      {
        plantId: second.plantId,
        word: { key: second.key, said: 'skipped', day: '2026-06-01', reason: 'It stood dry before.' },
      },
    ];
    expect((await bench.send('POST', '/api/work/words', { words })).status).toBe(204);
    const after = (await list()).work.filter(({ kind }) => kind === 'keep-dry');
    expect(after.map(({ state }) => state)).toEqual(['done', 'skipped']);
    expect(after[1]?.stateInWords).toContain('It stood dry before.');
    const back = words.map(({ plantId, word }) => ({ plantId, word: { key: word.key, said: null } }));
    await bench.send('POST', '/api/work/words', { words: back });
    expect(
      (await list()).work.filter(({ state, kind }) => kind === 'keep-dry' && state === 'due'),
    ).toHaveLength(2);
  });

  it('of the grower’s own comes round, on the bench too', async () => {
    const bench = await openBench();
    const plantId = await addPlant(bench);
    const form = { kind: 'feed', day: '2026-06-02', everyDays: 7, text: 'Feed at half strength.' };
    expect((await bench.send('POST', `/api/plants/${plantId}/own-work`, form)).status).toBe(201);
    const { work } = (await bench.send('GET', '/api/work?from=2026-06-01&to=2026-06-16')).body as WorkList;
    expect(work.filter(({ kind }) => kind === 'feed').map(({ day }) => day)).toEqual([
      '2026-06-02',
      '2026-06-09',
      '2026-06-16',
    ]);
    const { plants } = (await bench.send('GET', '/api/bench')).body;
    expect(plants[0].work.map(({ kind }: { kind: string }) => kind)).toContain('feed');
  });

  it('asks for a reason to skip', async () => {
    const bench = await openBench();
    const plantId = await addPlant(bench);
    const word = { key: 'a:b:c', said: 'skipped', day: '2026-06-01', reason: '' };
    const { status, body } = await bench.send('POST', '/api/work/words', { words: [{ plantId, word }] });
    expect(status).toBe(422);
    expect(JSON.stringify(body)).toContain('Say why');
  });
});

describe('a sitting left out', () => {
  it('stays out of the trend until it is taken in again', async () => {
    const bench = await openBench();
    const plantId = await addPlant(bench);
    const bytes = await cameraJpeg('2026:05:30 10:00:00', { seed: 1 });
    await bench.upload(plantId, [{ name: 'a.jpg', bytes }]);
    await bench.services.queue.whenIdle();
    const [{ id: sittingId }] = (await bench.send('GET', `/api/plants/${plantId}`)).body.sittings;
    const trend = async () => (await bench.send('GET', `/api/plants/${plantId}`)).body.trend[0];
    expect((await trend()).roundness).toBe(91.5);
    const left = await bench.send('PATCH', `/api/sittings/${sittingId}`, { leftOut: 'limp from drought' });
    expect(left.body.leftOut).toBe('limp from drought');
    expect(await trend()).toMatchObject({
      roundness: null,
      leftOut: 'Left out by you: limp from drought.',
    });
    const page = (await bench.send('GET', `/api/plants/${plantId}`)).body as PlantPage;
    expect(page.advice.map(({ what }) => what)).toContain('Photograph it again once it stands as it should.');
    await bench.send('PATCH', `/api/sittings/${sittingId}`, { leftOut: null });
    expect((await trend()).roundness).toBe(91.5);
  });
});

describe('the calendar', () => {
  it('lists weeks, shows and plans of all plants', async () => {
    const bench = await openBench();
    await addPlant(bench, { showDay: '2026-08-13' });
    const { body } = await bench.send('GET', '/api/calendar?from=2026-05-25&to=2026-08-16');
    const { weeks, shows, plants } = body as Calendar;
    expect(weeks.map(({ week }) => week)).toEqual([22, 23, 24, 25, 26, 27, 28, 29, 30, 31, 32, 33]);
    expect(shows.map(({ day }) => day)).toEqual(['2026-08-13']);
    expect(plants[0]?.steps.at(-1)).toMatchObject({ role: 'last', window: { to: '2026-06-08' } });
  });

  it('leaves out what comes round every week, unless it is asked for', async () => {
    const bench = await openBench();
    await addPlant(bench);
    const kinds = async (query: string) => {
      const { plants } = (await bench.send('GET', `/api/calendar${query}`)).body as Calendar;
      return plants.flatMap(({ work }) => work.map(({ kind }) => kind));
    };
    expect(await kinds('')).toEqual([]);
    expect(await kinds('?weekly=yes')).toEqual(expect.arrayContaining(['photograph', 'turn', 'look-over']));
  });

  it.each([
    ['from=2026-08-01&to=2026-07-01', 'The first day comes after the last.'],
    ['from=2020-01-01&to=2026-07-01', 'Ask for 800 days or fewer.'],
  ])('refuses %s', async (query, detail) => {
    const { send } = await openBench();
    const { status, body } = await send('GET', `/api/calendar?${query}`);
    expect([status, body.detail]).toEqual([422, detail]);
  });
});

describe('a plant’s year', () => {
  it('tells stops, bloom, result and what to do differently, and goes out as CSV', async () => {
    const bench = await openBench({ today: () => '2026-08-20' });
    const plantId = await addPlant(bench);
    const show = (await bench.send('POST', '/api/shows', SHOW)).body;
    await bench.send('PUT', `/api/plants/${plantId}/entries/${show.id}`, { result: '=Second prize' });
    await bench.send('POST', `/api/plants/${plantId}/stops`, { day: '2026-06-10', depth: 'tip' });
    await bench.send('POST', `/api/plants/${plantId}/notes`, { day: '2026-08-18', kind: 'full-bloom' });
    const year = (await bench.send('GET', `/api/plants/${plantId}/year`)).body as PlantYear;
    expect(year).toMatchObject({
      to: '2026-08-27',
      result: '=Second prize',
      bloom: { fullBloomDay: '2026-08-18', daysFromLastStop: 69, daysAfterShow: 5 },
    });
    expect(year.lessons.join(' ')).toContain('5 days after the show: too late');
    const csv = String((await bench.send('GET', `/api/plants/${plantId}/year.csv`)).body);
    expect(csv.split('\r\n').slice(0, 2)).toEqual([
      'day,what,roundness,±,symmetry,±,lopsidedness %,±,words',
      '2026-06-10,tip stop,,,,,,,',
    ]);
    expect(csv).toContain('2026-08-13,show,,,,,,,Alder Vale Summer Show. =Second prize');
  });
});
