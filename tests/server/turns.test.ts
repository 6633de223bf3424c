import { describe, expect, it } from 'vitest';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import { type BenchOptions, openBench, sampleMeasurement, sampleReport } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';
import { turnedReport } from './fixtures/turned-report.ts';

const TODAY = '2026-06-01';

/** A plant on a stand with light from the left, photographed today. */
async function litBench(turns: readonly number[], options: BenchOptions = {}) {
  const bench = await openBench({ join: async () => turnedReport(), ...options });
  const { send, addPlant, upload, services } = bench;
  const { body: stand } = await send('POST', '/api/stands', {
    name: 'Window shelf',
    lightSide: 'left',
    sinceDay: '2026-05-01',
  });
  const plant = await addPlant({ standId: stand.id });
  for (const turn of turns) {
    const files = [{ name: 'a.jpg', bytes: await plantJpeg(turn) }];
    await upload(plant.id, files, { day: TODAY, turnDeg: String(turn) });
  }
  await services.queue.whenIdle();
  const page = async () => plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
  const turn = (day: string, facesLightDeg: number) =>
    send('POST', `/api/plants/${plant.id}/turns`, { day, facesLightDeg });
  const advice = async () => (await page()).advice.filter(({ kind }) => kind === 'turn');
  return { ...bench, plant, stand, page, turn, advice };
}

/** Measured photos that lean to the left by 9 %. */
const LEANING: BenchOptions = {
  measure: async (task) => ({
    ...sampleMeasurement(task),
    report: sampleReport(task.photoName, {
      turnDeg: task.turnDeg,
      lopsidedness: { percent: -9, plusMinus: 2, side: 'left' },
    }),
  }),
};

describe('the recorded turns of a pot', () => {
  it('are added, changed, removed and brought back, and fill the ledger', async () => {
    const { turn, page, send } = await litBench([]);
    expect((await page()).light.ledger).toMatchObject({ nowFacesDeg: null, daysSinceTurn: null });
    await turn('2026-05-18', 0);
    const { body: second } = await turn('2026-05-25', 90);
    expect((await page()).light.ledger).toMatchObject({ nowFacesDeg: 90, daysSinceTurn: 7 });
    expect((await page()).turns.map(({ day }) => day)).toEqual(['2026-05-25', '2026-05-18']);
    const path = `/api/turns/${second.id}`;
    expect((await send('PATCH', path, { facesLightDeg: 180 })).body).toMatchObject({ facesLightDeg: 180 });
    expect((await page()).light.ledger.nowFacesDeg).toBe(180);
    expect((await send('DELETE', path)).status).toBe(204);
    expect((await page()).light.ledger).toMatchObject({ nowFacesDeg: 0, daysSinceTurn: 14 });
    expect((await send('POST', `${path}/restore`)).body).toMatchObject({ facesLightDeg: 180 });
    expect((await page()).light.ledger.nowFacesDeg).toBe(180);
  });

  it('of one day count in the order in which they were written down', async () => {
    const { turn, page } = await litBench([]);
    await turn(TODAY, 90);
    await turn(TODAY, 45);
    expect((await page()).light.ledger.nowFacesDeg).toBe(45);
  });

  it('with a side that cannot be are refused with a pointer to it', async () => {
    const { turn } = await litBench([]);
    const answer = await turn(TODAY, 360);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toEqual([
      { pointer: '/facesLightDeg', detail: 'Give the side that faces the light as 0 to 359 degrees.' },
    ]);
  });
});

describe('a plant’s rhythm', () => {
  it('is a quarter turn clockwise a week until it is changed', async () => {
    const { plant, send, page, turn } = await litBench([]);
    expect(plant.turnRhythm).toEqual({ everyDays: 7, byDeg: 90, way: 'clockwise' });
    await turn('2026-05-25', 0);
    expect((await page()).light.next).toMatchObject({ dueDay: TODAY, turnByDeg: -90 });
    const rhythm = { everyDays: 14, byDeg: 90, way: 'anticlockwise' };
    expect((await send('PATCH', `/api/plants/${plant.id}`, { turnRhythm: rhythm })).body.turnRhythm).toEqual(
      rhythm,
    );
    expect((await page()).light.next).toMatchObject({ dueDay: '2026-06-08', turnByDeg: 90 });
    await send('PATCH', `/api/plants/${plant.id}`, { turnRhythm: { ...rhythm, everyDays: null } });
    expect((await page()).light.next).toBeNull();
  });

  it.each([
    [{ everyDays: 0, byDeg: 90, way: 'clockwise' }, 'Give at least one day from turn to turn.'],
    [{ everyDays: 7, byDeg: 30, way: 'clockwise' }, '45, 90, 135 or 180 degrees'],
    [{ everyDays: 7, byDeg: 90, way: 'left' }, 'clockwise or anticlockwise'],
  ])('%j is refused', async (turnRhythm, sentence) => {
    const { plant, send } = await litBench([]);
    const answer = await send('PATCH', `/api/plants/${plant.id}`, { turnRhythm });
    expect(answer.status).toBe(422);
    expect(answer.body.detail).toContain(sentence);
  });
});

describe('the advice to turn', () => {
  it('comes from one photo as before, knows left and right only, and says how far by the stand’s light', async () => {
    const { advice } = await litBench([0], LEANING);
    expect(await advice()).toMatchObject([
      {
        what: 'Half a turn: bring its right side to the light.',
        where: expect.stringContaining('One photo tells left from right only'),
      },
    ]);
  });

  it('comes from the turned sitting where there is one, and no more from single photos', async () => {
    const { advice } = await litBench([0, 45, 90, 135], LEANING);
    expect(await advice()).toMatchObject([
      {
        what: 'Leave it as it stands: the 9 o’clock side already faces the light.',
        howMuch: 'Seen from 4 directions on 1 June 2026.',
        urgency: 0,
      },
    ]);
  });

  it('says nothing of an even plant, whatever its single photos say', async () => {
    const { advice } = await litBench([0, 45], {
      ...LEANING,
      join: async () => turnedReport({ percent: 1 }),
    });
    expect(await advice()).toEqual([]);
  });

  it('is put off by a recorded turn until it is due again', async () => {
    let today = TODAY;
    const { advice, turn } = await litBench([0], { ...LEANING, today: () => today });
    expect(await advice()).toHaveLength(1);
    await turn(TODAY, 90);
    expect(await advice()).toEqual([]);
    today = '2026-06-07';
    expect(await advice()).toEqual([]);
    today = '2026-06-08';
    expect(await advice()).toMatchObject([{ urgency: 1, howMuch: 'Due today.' }]);
    await turn(today, 180);
    expect(await advice()).toEqual([]);
  });

  it('without a reminder is put off by a turn until the next photo', async () => {
    const { advice, turn, send, plant } = await litBench([0], LEANING);
    const turnRhythm = { everyDays: null, byDeg: 90, way: 'clockwise' };
    await send('PATCH', `/api/plants/${plant.id}`, { turnRhythm });
    expect(await advice()).toHaveLength(1);
    await turn(TODAY, 90);
    expect(await advice()).toEqual([]);
  });

  it('reckons from how the pot stands, by its turns', async () => {
    const { turn, page, send, plant } = await litBench([0, 45, 90, 135]);
    const words = async () => (await page()).sittings[0]?.turned?.turn?.words;
    expect(await words()).toBe('Leave it as it stands: the 9 o’clock side already faces the light.');
    await turn(TODAY, 90);
    expect(await words()).toBe('Half a turn: bring the 9 o’clock side to the light.');
    await send('PATCH', `/api/plants/${plant.id}`, { standId: null });
    expect(await words()).toBe('Bring the 9 o’clock side to the light.');
  });
});

describe('the season of the light', () => {
  it('is told for a year from today once the stand’s latitude is known', async () => {
    const { send, stand, page } = await litBench([]);
    expect((await page()).light).toMatchObject({ fromCameraDeg: 270, season: null });
    const place = { latitudeDeg: 52, lightBearingDeg: 180 };
    expect((await send('PATCH', `/api/stands/${stand.id}`, place)).body).toMatchObject({
      ...place,
      version: 1,
    });
    const { season } = (await page()).light;
    expect(season?.[0]?.day).toBe(TODAY);
    expect(season).toHaveLength(27);
    // Early June at 52° north the sun stands at 90 − 52 + 22 degrees at noon.
    expect(season?.[0]?.noonElevationDeg).toBeCloseTo(60, 0);
    expect(season?.[0]?.meanBearingDeg).toBeCloseTo(180, 0);
    await send('PATCH', `/api/stands/${stand.id}`, { latitudeDeg: null });
    expect((await page()).light.season).toBeNull();
  });

  it('is not told of a latitude that cannot be', async () => {
    const { send, stand } = await litBench([]);
    const answer = await send('PATCH', `/api/stands/${stand.id}`, { latitudeDeg: 91 });
    expect(answer.status).toBe(422);
    expect(answer.body.detail).toBe('Give the latitude from −90 to 90 degrees.');
  });
});
