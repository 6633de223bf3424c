import { describe, expect, it } from 'vitest';
import type { LongStem, PhotoReport } from '../../core/report.ts';
import type { StemsOfSitting } from '../../core/stems/match-stems.ts';
import { type CutList, cutListSchema } from '../../server/schemas/cuts.ts';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import type { Sitting } from '../../server/schemas/sitting.ts';
import { longStem, placedStem, reportWithStems } from './fixtures/long-stems.ts';
import { type BenchOptions, openBench, sampleMeasurement, sampleReport } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';
import { turnedReport } from './fixtures/turned-report.ts';

const DAY = '2026-05-31';
const CROWN = { centre: [0, 18, 80], radius: 150 } as const;

/** A plant with one photo a turn given, all measured as `report` says. */
async function bench(report: PhotoReport, turns: readonly number[] = [0], options: BenchOptions = {}) {
  const opened = await openBench({
    measure: async (task) => ({ ...sampleMeasurement(task), report }),
    join: async () => turnedReport(),
    ...options,
  });
  const { addPlant, upload, send, services } = opened;
  const plant = await addPlant({ showDay: '2026-09-13' });
  let seed = 0;
  const photograph = async (day: string, turn: number) => {
    seed += 1;
    const files = [{ name: `${turn}.jpg`, bytes: await plantJpeg(seed) }];
    await upload(plant.id, files, { day, turnDeg: String(turn) });
    await services.queue.whenIdle();
  };
  for (const turn of turns) await photograph(DAY, turn);
  const page = async () => plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
  const sitting = (await page()).sittings[0] as Sitting;
  const path = `/api/sittings/${sitting.id}`;
  const list = async () => cutListSchema.parse((await send('GET', `${path}/cut-list`)).body);
  const mark = (cut: CutList['cuts'][number] | undefined, change: object) =>
    send('PATCH', `${path}/cuts/${cut?.id}`, change);
  const cutTo = (way: unknown) => send('PATCH', `/api/plants/${plant.id}`, { cutTo: way });
  return { ...opened, plant, sitting, path, page, list, mark, cutTo, photograph };
}

const THREE_STEMS = reportWithStems([longStem(2, 40), longStem(9, 25), longStem(12, 60)]);

describe('the cut list of one photo', () => {
  it('goes round the plant, with where, how much and why', async () => {
    const { list, sitting, plant } = await bench(THREE_STEMS);
    const { cuts, ...rest } = await list();
    expect(rest).toMatchObject({ sittingId: sitting.id, plantId: plant.id, day: DAY, from: 'one-photo' });
    expect(cuts.map(({ clockInPhoto, takeOffMm, stop }) => [clockInPhoto, takeOffMm, stop])).toEqual([
      [9, 25, 'tip'],
      [12, 60, 'deep'],
      [2, 40, 'deep'],
    ]);
    expect(cuts.every(({ state, chosen, note }) => state === 'open' && chosen && note === '')).toBe(true);
    expect(rest.viewIds).toEqual([sitting.views[0]?.id]);
    expect(rest.unseen.join(' ')).toContain('turn the pot and take more');
  });

  it('stands beside how to work and the cautions', async () => {
    const { list } = await bench(THREE_STEMS);
    const { advice } = await list();
    expect(advice.some(({ words, caution }) => !caution && words.includes('clean blade'))).toBe(true);
    expect(advice.some(({ words, caution }) => caution && words.includes('cannot be undone'))).toBe(true);
  });

  it('of an even plant is empty, and only the caution is left', async () => {
    const { list } = await bench(reportWithStems([]));
    const { cuts, advice } = await list();
    expect(cuts).toEqual([]);
    expect(advice.every(({ caution }) => caution)).toBe(true);
  });

  it('without a scale tells shares of the radius, and what to give for mm', async () => {
    const { ball } = THREE_STEMS;
    const { list } = await bench({
      ...THREE_STEMS,
      scale: null,
      ball: ball && { ...ball, radiusMm: null, radiusPlusMinusMm: null, outOfRoundMm: null },
      longStems: THREE_STEMS.longStems.map((stem) => ({ ...stem, excessMm: null })),
    });
    const { cuts, ball: cutTo, ballWhyNot, growth, growthWhyNot } = await list();
    expect(cuts.map(({ takeOffMm }) => takeOffMm)).toEqual([null, null, null]);
    expect(cuts[1]?.takeOffPercent).toBeCloseTo(40);
    expect([cutTo, growth]).toEqual([null, null]);
    expect(ballWhyNot).toContain('rim diameter');
    expect(growthWhyNot).toContain('rim diameter');
  });

  it('that could not be measured says what to do', async () => {
    const { send, path } = await bench(
      sampleReport('a.jpg', { status: 'blurred', hint: 'Hold the camera still.' }),
    );
    const answer = await send('GET', `${path}/cut-list`);
    expect(answer.status).toBe(404);
    expect(answer.body.detail).toBe('Hold the camera still.');
  });

  it('of a photo still being measured asks for a moment', async () => {
    let isFirst = true;
    const { send, path, photograph } = await bench(THREE_STEMS, [0], {
      measure: async (task) => {
        if (!isFirst) return new Promise<never>(() => {});
        isFirst = false;
        return { ...sampleMeasurement(task), report: THREE_STEMS };
      },
    });
    photograph(DAY, 90).catch(() => {});
    await expect
      .poll(async () => (await send('GET', `${path}/cut-list`)).status, { timeout: 5000 })
      .toBe(409);
  });
});

describe('the cut list of a turned sitting', () => {
  const stems: StemsOfSitting = {
    stems: [placedStem(180, 60), placedStem(90, 28, { unsure: true, seenIn: [1] })],
    crown: CROWN,
    notes: ['One long stem is seen from one direction only.'],
  };

  it('tells clock from above and height, and says what one view alone shows', async () => {
    const { list, sitting } = await bench(THREE_STEMS, [0, 90], { stems: async () => stems });
    const { from, cuts, unseen, viewIds } = await list();
    expect(from).toBe('turned');
    expect(cuts.map(({ clockFromAbove, takeOffMm, sure }) => [clockFromAbove, takeOffMm, sure])).toEqual([
      [12, 60, 'sure'],
      [3, 28, 'unsure'],
    ]);
    expect(cuts.every(({ heightMm }) => heightMm !== null && heightMm > 80)).toBe(true);
    expect(unseen[0]).toBe(stems.notes[0]);
    expect(viewIds).toEqual(sitting.turnedViewIds);
  });

  it('places its stems once, and anew when a turn was corrected', async () => {
    let placings = 0;
    const { list, send, sitting, services } = await bench(THREE_STEMS, [0, 90], {
      stems: async () => {
        placings += 1;
        return stems;
      },
    });
    await list();
    await list();
    expect(placings).toBe(1);
    await send('PATCH', `/api/views/${sitting.views[1]?.id}`, { turnDeg: 120 });
    await services.queue.whenIdle();
    await list();
    expect(placings).toBe(2);
  });

  it('says first when the photos do not fit each other', async () => {
    const words = 'The pot stood elsewhere in photo 2.';
    const fault = {
      kind: 'pot-moved',
      view: 1,
      otherView: null,
      fitsTurnDeg: null,
      asideMm: 12,
      from: 'rim',
    } as const;
    const { list } = await bench(THREE_STEMS, [0, 90], {
      stems: async () => stems,
      join: async () => ({ ...turnedReport(), faults: [{ ...fault, words }] }),
    });
    expect((await list()).unseen[0]).toBe(
      `${words} Until that is put right the places of the stems may be wrong.`,
    );
  });

  it('falls back on the photo with most long stems where nothing can be placed, and says why', async () => {
    const why = 'A view has no scale, so long stems cannot be placed on the plant.';
    const { list } = await bench(THREE_STEMS, [0, 90], {
      stems: async () => ({ stems: [], crown: null, notes: [why] }),
    });
    const { from, unseen, cuts } = await list();
    expect([from, unseen[0], cuts.length]).toEqual(['one-photo', why, 3]);
  });
});

describe('a cut', () => {
  it('can be ticked off, skipped, left out and noted, and stays so', async () => {
    const { list, mark } = await bench(THREE_STEMS);
    const [nine, twelve, two] = (await list()).cuts;
    const answer = await mark(nine, { state: 'done', note: '  above the second joint ' });
    expect(cutListSchema.parse(answer.body).cuts[0]).toMatchObject({
      state: 'done',
      note: 'above the second joint',
    });
    await mark(twelve, { chosen: false });
    await mark(two, { state: 'skipped' });
    await mark(nine, { note: 'clean' });
    expect((await list()).cuts.map(({ state, chosen, note }) => [state, chosen, note])).toEqual([
      ['done', true, 'clean'],
      ['open', false, ''],
      ['skipped', true, ''],
    ]);
  });

  it('keeps its tick when the photo is measured anew and its tip reads a little elsewhere', async () => {
    let report = THREE_STEMS;
    const { list, mark, send, sitting, services } = await bench(THREE_STEMS, [0], {
      measure: async (task) => ({ ...sampleMeasurement(task), report }),
    });
    const nine = (await list()).cuts[0];
    await mark(nine, { state: 'done' });
    report = reportWithStems([longStem(2, 40), longStem(9, 29), longStem(12, 60)]);
    await send('POST', `/api/views/${sitting.views[0]?.id}/measure`);
    await services.queue.whenIdle();
    const { cuts } = await list();
    expect(cuts[0]?.id).not.toBe(nine?.id);
    expect(cuts.map(({ state }) => state)).toEqual(['done', 'open', 'open']);
    await mark(cuts[0], { state: 'open' });
    expect((await list()).cuts.map(({ state }) => state)).toEqual(['open', 'open', 'open']);
  });

  it('that is not on the list, or a state that there is not, is told in a sentence', async () => {
    const { list, mark, send, path } = await bench(THREE_STEMS);
    const gone = await send('PATCH', `${path}/cuts/photo-1-1`, { state: 'done' });
    expect([gone.status, gone.body.detail]).toEqual([404, expect.stringContaining('Load the list again')]);
    const wrong = await mark((await list()).cuts[0], { state: 'cut' });
    expect([wrong.status, wrong.body.detail]).toEqual([422, 'A cut is "open", "done" or "skipped".']);
  });
});

describe('the ball to cut to', () => {
  it('is the plant’s own to begin with', async () => {
    const { list, page } = await bench(THREE_STEMS);
    expect((await page()).plant.cutTo).toEqual({ kind: 'even-up' });
    expect((await list()).ball).toMatchObject({ way: 'even-up', radiusMm: 150, range: [146, 154] });
  });

  it('may be a width: each stem loses so much more', async () => {
    const { list, cutTo } = await bench(THREE_STEMS);
    expect((await cutTo({ kind: 'width', widthMm: 280 })).body.cutTo).toEqual({
      kind: 'width',
      widthMm: 280,
    });
    const { ball, cuts } = await list();
    expect(ball).toMatchObject({ way: 'width', radiusMm: 140, range: null, needsDeepStops: false });
    expect(cuts.map(({ takeOffMm }) => takeOffMm)).toEqual([35, 70, 50]);
  });

  it('may be counted back from the show, with a range and what the growth rests on', async () => {
    const { list, cutTo } = await bench(THREE_STEMS);
    await cutTo({ kind: 'show', widestMm: 360 });
    const { ball, growth } = await list();
    expect(ball?.way).toBe('show');
    expect(ball?.radiusMm).toBeLessThan(150);
    const [low, high] = ball?.range ?? [0, 0];
    expect(low < (ball?.radiusMm ?? 0) && (ball?.radiusMm ?? 0) < high).toBe(true);
    expect(ball?.why).toContain('a guess of ours');
    expect(growth).toMatchObject({ sittings: 1, restsOn: 'guess', sureness: 'unsure' });
    expect(growth?.forecast.at(-1)?.day).toBe('2026-09-13');
  });

  it('that cannot be reached says so, and the list evens up', async () => {
    const { list, cutTo, send, plant } = await bench(THREE_STEMS);
    await cutTo({ kind: 'width', widthMm: 60 });
    const { ball, ballWhyNot, cuts } = await list();
    expect(ball).toBeNull();
    expect(ballWhyNot).toContain('more than two thirds off');
    expect(ballWhyNot).toContain('evens the plant up to its present ball');
    expect(cuts.map(({ takeOffMm }) => takeOffMm)).toEqual([25, 60, 40]);
    await cutTo({ kind: 'show', widestMm: 360 });
    await send('PATCH', `/api/plants/${plant.id}`, { showDay: null });
    expect((await list()).ballWhyNot).toContain('Set the day of the show');
  });

  it('is refused with a sentence when it makes no sense', async () => {
    const { cutTo, page } = await bench(THREE_STEMS);
    const refusals = [
      [{ kind: 'width', widthMm: 5 }, 'Less than 50 mm across is no plant to show; give millimetres.'],
      [{ kind: 'width' }, 'Give the width to cut to in millimetres, for example 300.'],
      [
        { kind: 'show', widestMm: '30 cm' },
        'Give the widest that it may be at the show in millimetres, for example 300.',
      ],
      [{ kind: 'hard' }, 'Choose how to cut: "even-up", to a "width" of your own, or back from the "show".'],
    ] as const;
    for (const [way, words] of refusals) {
      const { status, body } = await cutTo(way);
      expect([status, body.detail]).toEqual([422, words]);
    }
    expect((await page()).plant.cutTo).toEqual({ kind: 'even-up' });
  });

  it('of an earlier sitting is read as on its day', async () => {
    const { list, cutTo, photograph } = await bench(THREE_STEMS);
    await cutTo({ kind: 'show', widestMm: 360 });
    await photograph('2026-06-01', 0);
    const { growth } = await list();
    expect([growth?.sittings, growth?.forecast[0]?.day]).toEqual([1, DAY]);
  });
});

describe('planned and done', () => {
  it('is not told before anything was ticked off', async () => {
    const { list, mark } = await bench(THREE_STEMS);
    expect((await list()).worked).toBeNull();
    const [nine, twelve, two] = (await list()).cuts;
    await mark(nine, { state: 'done' });
    await mark(twelve, { state: 'skipped' });
    await mark(two, { chosen: false });
    expect((await list()).worked).toMatchObject({
      plannedCuts: 1,
      done: 1,
      skipped: 1,
      comparedWith: null,
      words: null,
    });
  });

  /** A worked list, and the plant photographed again. */
  async function photographedAgain(later: readonly LongStem[], day: string, turn: number) {
    let report = THREE_STEMS;
    const opened = await bench(THREE_STEMS, [0], {
      measure: async (task) => ({ ...sampleMeasurement(task), report }),
    });
    for (const cut of (await opened.list()).cuts) await opened.mark(cut, { state: 'done' });
    report = reportWithStems(later);
    await opened.photograph(day, turn);
    return (await opened.list()).worked;
  }

  it('is told by the next photo of the same side', async () => {
    const worked = await photographedAgain([longStem(2, 22)], '2026-06-01', 0);
    expect(worked).toMatchObject({ plannedCuts: 3, done: 3, comparedDay: '2026-06-01' });
    expect(worked?.words).toBe('2 of 3 tips are gone; the one at 2 o’clock still stands 22 mm out.');
    expect(worked?.standing.length).toBe(1);
  });

  it('says when the next photo shows another side', async () => {
    const worked = await photographedAgain([], '2026-06-01', 90);
    expect(worked?.comparedWith).toBeNull();
    expect(worked?.words).toContain('Photograph it at the same turns.');
  });

  it('is not told by a photo that comes too late', async () => {
    const worked = await photographedAgain([], '2026-06-15', 0);
    expect([worked?.comparedWith, worked?.words]).toEqual([null, null]);
  });

  it('is told on the same day by a photo that comes in after the work, which leaves the list as it was', async () => {
    const worked = await photographedAgain([longStem(2, 22)], DAY, 0);
    expect(worked).toMatchObject({ plannedCuts: 3, done: 3, comparedDay: DAY });
    expect(worked?.words).toBe('2 of 3 tips are gone; the one at 2 o’clock still stands 22 mm out.');
  });

  it('takes a photo of the day for one before the work when every tick is taken back', async () => {
    let report = reportWithStems([longStem(2, 40)]);
    const { list, mark, page, photograph } = await bench(report, [0], {
      measure: async (task) => ({ ...sampleMeasurement(task), report }),
    });
    const [two] = (await list()).cuts;
    await mark(two, { state: 'done' });
    report = THREE_STEMS;
    await photograph(DAY, 90);
    expect((await list()).cuts.map(({ id }) => id)).toEqual([two?.id]);
    expect((await list()).worked?.words).toContain('at the same turns');
    const [sitting] = (await page()).sittings;
    expect([sitting?.turnedState, sitting?.views.map(({ afterWork }) => afterWork)]).toEqual([
      'one-view',
      [false, true],
    ]);
    await mark(two, { state: 'open' });
    await expect.poll(async () => (await page()).sittings[0]?.turnedState).toBe('ready');
    expect((await list()).cuts).toHaveLength(3);
  });

  it('in the round is told by the stems placed then', async () => {
    let stems = [placedStem(180, 60), placedStem(90, 40)];
    const opened = await bench(THREE_STEMS, [0, 90], {
      stems: async () => ({ stems, crown: CROWN, notes: [] }),
    });
    for (const cut of (await opened.list()).cuts) await opened.mark(cut, { state: 'done' });
    stems = [placedStem(184, 31)];
    for (const turn of [0, 90]) await opened.photograph('2026-06-02', turn);
    expect((await opened.list()).worked?.words).toBe(
      '1 of 2 tips is gone; the one at 12 o’clock still stands 31 mm out.',
    );
  });
});
