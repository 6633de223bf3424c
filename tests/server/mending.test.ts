import { describe, expect, it } from 'vitest';
import type { Stroke } from '../../core/canopy/stroke.ts';
import { viewSchema } from '../../server/schemas/sitting.ts';
import { STROKE_LIMITS } from '../../server/schemas/stroke.ts';
import { onlyEntry } from './fixtures/client.ts';
import { type BenchOptions, openBench, sampleMeasurement, temporaryFolder } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';

const KEEP: Stroke = {
  kind: 'keep',
  widthPx: 24,
  pointsPx: [
    [100, 120],
    [140, 130],
  ],
};
const REMOVE: Stroke = { kind: 'remove', widthPx: 10, pointsPx: [[300.5, 200.25]] };

async function benchWithPhoto(options: BenchOptions = {}) {
  const bench = await openBench(options);
  const plant = await bench.addPlant({ rimMm: 130 });
  const entry = onlyEntry(await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
  if (entry.outcome !== 'kept') throw new Error(entry.detail);
  await bench.services.queue.whenIdle();
  return { ...bench, plant, path: `/api/views/${entry.view.id}` };
}

/** A gate: whoever waits goes on when it is opened. */
function gate(): { readonly opened: Promise<void>; open(): void } {
  let open: () => void = () => {};
  const opened = new Promise<void>((resolve) => {
    open = resolve;
  });
  return { opened, open };
}

describe('strokes', () => {
  it('are kept with the view, and it is cut with them before the answer', async () => {
    const { send, path, corrected } = await benchWithPhoto();
    const answer = await send('PUT', `${path}/strokes`, { strokes: [KEEP, REMOVE] });
    expect(answer.status).toBe(200);
    const view = viewSchema.parse(answer.body);
    expect(view).toMatchObject({ state: 'measured', strokes: [KEEP, REMOVE], acceptedOutline: false });
    expect(view.drawing).toEqual({ unsure: [], parts: { flower: [], pot: [], soil: [], support: [] } });
    expect(corrected.map(({ strokes }) => strokes)).toEqual([[KEEP, REMOVE]]);
    expect((await send('GET', path)).body).toEqual(answer.body);

    expect((await send('PUT', `${path}/strokes`, { strokes: [] })).body.strokes).toEqual([]);
    expect(corrected.at(-1)?.strokes).toEqual([]);
  });

  it('are replayed when a new method measures the photo anew, and when the grower asks for it', async () => {
    const homePath = temporaryFolder();
    const before = await benchWithPhoto({ homePath });
    await before.send('PUT', `${before.path}/strokes`, { strokes: [KEEP] });
    await before.send('POST', `${before.path}/measure`);
    await before.services.queue.whenIdle();
    expect(before.measured.at(-1)?.strokes).toEqual([KEEP]);
    before.services.queue.close();
    before.services.db.prepare("UPDATE measurements SET method_version = '0'").run();

    const after = await openBench({ homePath });
    await after.services.queue.whenIdle();
    expect(after.measured.map(({ strokes }) => strokes)).toEqual([[KEEP]]);
    expect((await after.send('GET', before.path)).body.strokes).toEqual([KEEP]);
  });

  it('of the later of two requests win, and both answers show them', async () => {
    const hold = gate();
    let begun: () => void = () => {};
    const first = new Promise<void>((resolve) => {
      begun = resolve;
    });
    const { send, path, corrected } = await benchWithPhoto({
      measure: async (task) => {
        if (task.strokes.length > 0) {
          begun();
          await hold.opened;
        }
        return sampleMeasurement(task);
      },
    });
    const one = send('PUT', `${path}/strokes`, { strokes: [KEEP] });
    await first;
    const two = send('PUT', `${path}/strokes`, { strokes: [KEEP, REMOVE] });
    await expect.poll(async () => (await send('GET', path)).body.strokes.length).toBe(2);
    hold.open();
    for (const answer of await Promise.all([one, two])) {
      expect(answer.status).toBe(200);
      expect(answer.body).toMatchObject({ state: 'measured', strokes: [KEEP, REMOVE] });
    }
    expect(corrected.map(({ strokes }) => strokes.length)).toEqual([1, 2]);
  });

  it('lie in the store before anything is measured, so that a stop loses none', async () => {
    const homePath = temporaryFolder();
    const stopped = gate();
    const before = await benchWithPhoto({
      homePath,
      measure: async (task) => {
        if (task.strokes.length === 0) return sampleMeasurement(task);
        stopped.open();
        return new Promise(() => {});
      },
    });
    before.send('PUT', `${before.path}/strokes`, { strokes: [REMOVE] }).catch(() => {});
    await stopped.opened;
    const after = await openBench({ homePath });
    await after.services.queue.whenIdle();
    expect((await after.send('GET', before.path)).body).toMatchObject({
      state: 'measured',
      strokes: [REMOVE],
    });
    expect(after.measured.map(({ strokes }) => strokes)).toEqual([[REMOVE]]);
  });

  it('that are too many for a form still come through', async () => {
    const { send, path } = await benchWithPhoto();
    const pointsPx = Array.from({ length: STROKE_LIMITS.points }, (_, k): [number, number] => [k / 4, 200.5]);
    const strokes = Array.from({ length: STROKE_LIMITS.strokes }, () => ({ ...KEEP, pointsPx }));
    expect((await send('PUT', `${path}/strokes`, { strokes })).status).toBe(200);
  });

  it.each([
    [
      'no list',
      { strokes: 3 },
      '/strokes',
      'Give the strokes as a list; an empty one takes all strokes away.',
    ],
    [
      'another kind',
      { strokes: [{ ...KEEP, kind: 'blur' }] },
      '/strokes/0/kind',
      'A stroke is either "keep" or "remove".',
    ],
    [
      'no width',
      { strokes: [{ ...KEEP, widthPx: 0 }] },
      '/strokes/0/widthPx',
      'A stroke must be at least half a px wide.',
    ],
    [
      'a width beyond the photo',
      { strokes: [{ ...KEEP, widthPx: 641 }] },
      '/strokes/0/widthPx',
      'A stroke cannot be wider than the photo.',
    ],
    [
      'no point',
      { strokes: [{ ...KEEP, pointsPx: [] }] },
      '/strokes/0/pointsPx',
      'A stroke needs at least one point.',
    ],
    [
      'a point of one number',
      { strokes: [{ ...KEEP, pointsPx: [[4]] }] },
      '/strokes/0/pointsPx/0',
      'Give each point as two numbers, across and down, in px of the photo.',
    ],
    [
      'a point far outside',
      { strokes: [REMOVE, { ...KEEP, pointsPx: [...KEEP.pointsPx, [900, 20]] }] },
      '/strokes/1/pointsPx/2',
      'A point of stroke 2 lies far outside the photo, which is 640 × 480 px. Draw on the photo.',
    ],
    [
      'too many points',
      { strokes: [{ ...KEEP, pointsPx: Array.from({ length: 2001 }, () => [1, 1]) }] },
      '/strokes/0/pointsPx',
      'A stroke may have 2000 points at most. Lift the brush and draw on in a new stroke.',
    ],
    [
      'too many strokes',
      { strokes: Array.from({ length: 201 }, () => REMOVE) },
      '/strokes',
      'A photo may have 200 strokes at most. Undo some, or mend with a broader brush.',
    ],
  ])('with %s are refused with a sentence, and nothing changes', async (_, body, pointer, detail) => {
    const { send, path, corrected } = await benchWithPhoto();
    const answer = await send('PUT', `${path}/strokes`, body);
    expect(answer.status).toBe(422);
    expect(answer.body.errors).toContainEqual({ pointer, detail });
    expect((await send('GET', path)).body).toMatchObject({ strokes: [], state: 'measured' });
    expect(corrected).toEqual([]);
  });

  it('a little outside the photo are taken: a hand runs over the edge', async () => {
    const { send, path } = await benchWithPhoto();
    const strokes = [{ ...KEEP, pointsPx: [[-20, 490]] }];
    expect((await send('PUT', `${path}/strokes`, { strokes })).status).toBe(200);
  });

  it('on a photo that is not there, or was removed, are refused', async () => {
    const { send, path } = await benchWithPhoto();
    expect((await send('PUT', '/api/views/00000000-0000/strokes', { strokes: [] })).status).toBe(404);
    await send('DELETE', path);
    const answer = await send('PUT', `${path}/strokes`, { strokes: [] });
    expect([answer.status, answer.body.detail]).toEqual([
      404,
      'This photo was removed. Bring it back first.',
    ]);
  });

  it('leave one measurement a view, however often it is mended', async () => {
    const { send, path, services } = await benchWithPhoto();
    for (const strokes of [[KEEP], [KEEP, REMOVE], [REMOVE]])
      await send('PUT', `${path}/strokes`, { strokes });
    expect(services.db.prepare('SELECT count(*) AS kept FROM measurements').get()).toEqual({ kept: 1 });
  });
});

describe('making a photo ready', () => {
  it('answers 204 and changes nothing', async () => {
    const { send, path, corrected } = await benchWithPhoto();
    const before = (await send('GET', path)).body;
    expect((await send('POST', `${path}/warm`)).status).toBe(204);
    expect((await send('GET', path)).body).toEqual(before);
    expect(corrected).toEqual([]);
    expect((await send('POST', '/api/views/00000000-0000/warm')).status).toBe(404);
  });

  it('leaves it a core: one photo fewer is measured meanwhile', async () => {
    for (const [inUse, most] of [
      [true, 1],
      [false, 2],
    ] as const) {
      let [underWay, mostUnderWay] = [0, 0];
      const bench = await openBench({
        atOnce: 2,
        holdBack: () => inUse,
        measure: async (task) => {
          underWay += 1;
          mostUnderWay = Math.max(mostUnderWay, underWay);
          await new Promise((resolve) => setTimeout(resolve, 20));
          underWay -= 1;
          return sampleMeasurement(task);
        },
      });
      const plant = await bench.addPlant();
      const files = await Promise.all(
        [1, 2, 3].map(async (seed) => ({ name: `${seed}.jpg`, bytes: await plantJpeg(seed) })),
      );
      await bench.upload(plant.id, files);
      bench.services.db.prepare("UPDATE views SET state = 'received', revision = revision + 1").run();
      await bench.services.queue.whenIdle();
      expect(mostUnderWay).toBe(most);
    }
  });
});

describe('the rim set by hand', () => {
  const RIM = { leftPx: [40, 150], rightPx: [120, 152] };

  it('is kept with the view, and it is measured with it before the answer', async () => {
    const { send, path, corrected } = await benchWithPhoto();
    expect((await send('GET', path)).body.rimByHand).toBeNull();
    const answer = await send('PUT', `${path}/rim`, { rim: RIM });
    expect(answer.status).toBe(200);
    expect(viewSchema.parse(answer.body)).toMatchObject({ state: 'measured', rimByHand: RIM });
    expect(corrected.map(({ rimByHand }) => rimByHand)).toEqual([RIM]);
    expect((await send('GET', path)).body).toEqual(answer.body);
  });

  it('stays when strokes are drawn, and is taken back with null', async () => {
    const { send, path, corrected } = await benchWithPhoto();
    await send('PUT', `${path}/rim`, { rim: RIM });
    await send('PUT', `${path}/strokes`, { strokes: [KEEP] });
    expect(corrected.at(-1)).toMatchObject({ rimByHand: RIM, strokes: [KEEP] });
    expect((await send('PUT', `${path}/rim`, { rim: null })).body.rimByHand).toBeNull();
    expect(corrected.at(-1)).toMatchObject({ rimByHand: null, strokes: [KEEP] });
  });

  it('keeps the grower’s word that the outline is right', async () => {
    const { send, path } = await benchWithPhoto();
    await send('PUT', `${path}/accepted`, { accepted: true });
    expect((await send('PUT', `${path}/rim`, { rim: RIM })).body.acceptedOutline).toBe(true);
  });

  it('is refused with a sentence when it cannot be a rim', async () => {
    const { send, path } = await benchWithPhoto();
    const refusal = async (rim: object) => (await send('PUT', `${path}/rim`, { rim })).body.errors[0].detail;
    expect(await refusal({ leftPx: [120, 150], rightPx: [40, 150] })).toBe(
      'The left end of the rim must lie at the left of the right end, and the two apart.',
    );
    expect(await refusal({ leftPx: [40, 20], rightPx: [120, 150] })).toContain('lean by more than 19°');
    expect(await refusal({ leftPx: [-4, 20], rightPx: [120, 20] })).toContain('must lie on the photo');
  });
});
