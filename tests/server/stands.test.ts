import { describe, expect, it } from 'vitest';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import { type Stand, standListSchema, standOverlaySchema, standSchema } from '../../server/schemas/stand.ts';
import { onlyEntry } from './fixtures/client.ts';
import {
  type BenchOptions,
  openBench,
  sampleMeasurement,
  sampleReport,
  type TestBench,
} from './fixtures/open-bench.ts';
import { cameraJpeg, plantJpeg } from './fixtures/photos.ts';

const SHEET = { paper: 'A4', place: 'backdrop', plantInFrontMm: 150 } as const;

/** A bench whose day the test turns, with one stand. */
async function standBench(form: object = {}, options: BenchOptions = {}) {
  let today = '2026-03-01';
  const bench = await openBench({ ...options, today: () => today });
  const made = await bench.send('POST', '/api/stands', { name: 'Potting bench', ...form });
  expect(made.status).toBe(201);
  const stand = standSchema.parse(made.body);
  const address = `/api/stands/${stand.id}`;
  return {
    ...bench,
    stand,
    address,
    turnDayTo: (day: string) => {
      today = day;
    },
    now: async () => standSchema.parse((await bench.send('GET', address)).body),
    change: async (facts: object) => standSchema.parse((await bench.send('PATCH', address, facts)).body),
    giveEmptyPhoto: async (seed = 9) => {
      const form = new FormData();
      // A small bush in a corner, elsewhere for another seed, makes each a file of its own.
      const bytes = await plantJpeg(seed, { plantsAt: [seed / 20], size: 0.05 });
      form.append('photo', new Blob([new Uint8Array(bytes)]), 'empty.jpg');
      return bench.send('PUT', `${address}/empty-photo`, form);
    },
    photograph: async (plantId: string, seed: number, day?: string) => {
      const files = [{ name: `${seed}.jpg`, bytes: await plantJpeg(seed) }];
      const entry = onlyEntry(await bench.upload(plantId, files, day ? { day } : {}));
      if (entry.outcome !== 'kept') throw new Error(entry.detail);
      await bench.services.queue.whenIdle();
      return entry.view;
    },
  };
}

async function page({ send }: Pick<TestBench, 'send'>, plantId: string) {
  return plantPageSchema.parse((await send('GET', `/api/plants/${plantId}`)).body);
}

function words({ history }: Stand): string[] {
  return history.map(({ changed }) => changed);
}

describe('a stand', () => {
  it('is set up with what is known, and the rest stays unknown', async () => {
    const { stand, send } = await standBench();
    expect(stand).toEqual({
      id: stand.id,
      version: 1,
      name: 'Potting bench',
      latitudeDeg: null,
      lightBearingDeg: null,
      lightSide: null,
      backdrop: null,
      cameraDistanceMm: null,
      cameraHeightMm: null,
      scaleFrom: 'none',
      sheet: null,
      emptyPhoto: null,
      reference: null,
      sinceDay: '2026-03-01',
      history: [{ version: 1, sinceDay: '2026-03-01', changed: 'The stand was set up.' }],
      plants: 0,
      putAway: false,
    });
    expect(standListSchema.parse((await send('GET', '/api/stands')).body)).toEqual([stand]);
  });

  it.each([
    [{}, '/name', 'Give the stand a name.'],
    [{ name: ' ' }, '/name', 'Give the stand a name.'],
    [{ name: 'a', sheet: 'A4' }, '/sheet', /its paper, its place and plantInFrontMm/],
    [{ name: 'a', lightSide: 'north' }, '/lightSide', /left, right, behind-camera, behind-plant or above/],
    [{ name: 'a', cameraDistanceMm: 15 }, '/cameraDistanceMm', /give millimetres/],
    [{ name: 'a', scaleFrom: 'sheet' }, '/sheet', /say which paper it is/],
    [
      { name: 'a', sheet: { ...SHEET, paper: 'A5' } },
      '/sheet/paper',
      'The sheet is printed on A4 or Letter.',
    ],
    [{ name: 'a', sinceDay: '2026-06-02' }, '/sinceDay', /still to come/],
  ])('of %j is refused with the field and what to do', async (form, pointer, detail) => {
    const { send } = await openBench();
    const { status, headers, body } = await send('POST', '/api/stands', form);
    expect(status).toBe(422);
    expect(headers.get('content-type')).toContain('application/problem+json');
    expect(body.errors[0].pointer).toBe(pointer);
    expect(body.detail).toMatch(detail);
    expect((await send('GET', '/api/stands')).body).toEqual([]);
  });

  it('that is not there is a problem', async () => {
    const { send, addPlant } = await openBench();
    for (const [method, path] of [
      ['GET', ''],
      ['PATCH', ''],
      ['POST', '/put-away'],
      ['DELETE', '/empty-photo'],
      ['GET', '/overlay'],
    ] as const) {
      const body = method === 'PATCH' ? {} : undefined;
      const answer = await send(method, `/api/stands/no-such-stand${path}`, body);
      expect([answer.status, answer.body.detail]).toEqual([
        404,
        'There is no such stand. It may have been removed; go back to the bench.',
      ]);
    }
    const plant = await addPlant();
    const answer = await send('PATCH', `/api/plants/${plant.id}`, { standId: 'no-such-stand' });
    expect([answer.status, answer.body.errors[0].pointer]).toEqual([422, '/standId']);
  });

  it('is written anew, without a new version, until a photo was taken on it', async () => {
    const { change, giveEmptyPhoto } = await standBench();
    await change({ lightSide: 'left', cameraDistanceMm: 1500 });
    await giveEmptyPhoto();
    const stand = await change({ scaleFrom: 'sheet', sheet: SHEET });
    expect(stand).toMatchObject({ version: 1, lightSide: 'left', sheet: SHEET, reference: 'empty-photo' });
    expect(stand.history).toHaveLength(1);
  });

  it('begins a new version once photos were taken on it; their sittings keep the old one unmeasured', async () => {
    const bench = await standBench({ lightSide: 'left' });
    const plant = await bench.addPlant({ standId: bench.stand.id });
    const view = await bench.photograph(plant.id, 1);
    expect([view.standId, view.standVersion]).toEqual([bench.stand.id, 1]);
    bench.turnDayTo('2026-04-01');
    const measuredBefore = bench.measured.length;
    const stand = await bench.change({ lightSide: 'right', cameraDistanceMm: 1500 });
    await bench.services.queue.whenIdle();
    expect(bench.measured.length).toBe(measuredBefore);
    expect(stand).toMatchObject({ version: 2, sinceDay: '2026-04-01', plants: 1 });
    expect(words(stand)).toEqual([
      'The camera stands 1500 mm from the plant. The light comes from the right.',
      'The stand was set up.',
    ]);
    await bench.photograph(plant.id, 2);
    const { sittings } = await page(bench, plant.id);
    expect(sittings.map(({ day, standVersion }) => [day, standVersion])).toEqual([
      ['2026-04-01', 2],
      ['2026-03-01', 1],
    ]);
    // A photo of before the change, sent late, was taken on the stand of before.
    expect((await bench.photograph(plant.id, 3, '2026-03-15')).standVersion).toBe(1);
    expect((await bench.photograph(plant.id, 4, '2026-01-15')).standVersion).toBe(1);
  });

  it('keeps its version over a new name or a change that changes nothing', async () => {
    const bench = await standBench({ lightSide: 'left' });
    const plant = await bench.addPlant({ standId: bench.stand.id });
    await bench.photograph(plant.id, 1);
    expect(await bench.change({ name: 'Shed', lightSide: 'left' })).toMatchObject({
      name: 'Shed',
      version: 1,
    });
  });

  it('takes sittings along from the day that the grower names, and measures them anew', async () => {
    const bench = await standBench({ scaleFrom: 'sheet', sheet: { ...SHEET, plantInFrontMm: 15 } });
    const plant = await bench.addPlant({ standId: bench.stand.id });
    for (const [seed, day] of [
      [1, '2026-03-02'],
      [2, '2026-03-09'],
    ] as const) {
      bench.turnDayTo(day);
      await bench.photograph(plant.id, seed);
    }
    const before = bench.measured.length;
    await bench.change({ sheet: SHEET, sinceDay: '2026-03-05' });
    await bench.services.queue.whenIdle();
    expect(bench.measured.slice(before).map(({ photoName, stand }) => [photoName, stand.sheet])).toEqual([
      ['2.jpg', SHEET],
    ]);
    const refused = await bench.send('PATCH', bench.address, { lightSide: 'above', sinceDay: '2026-02-01' });
    expect([refused.status, refused.body.detail]).toEqual([
      422,
      'Give 2026-03-05 or a later day: before it the stand was already another.',
    ]);
    const early = await bench.send('PATCH', bench.address, { lightSide: 'above', sinceDay: '2027-02-01' });
    expect(early.body.errors).toEqual([
      { pointer: '/sinceDay', detail: 'Give today or an earlier day; 2027-02-01 is still to come.' },
    ]);
    expect((await bench.now()).version).toBe(2);
  });

  it('can be put away and brought back; meanwhile photos are taken without it', async () => {
    const bench = await standBench();
    const plant = await bench.addPlant({ standId: bench.stand.id });
    expect((await bench.send('POST', `${bench.address}/put-away`)).body.putAway).toBe(true);
    expect((await bench.photograph(plant.id, 1)).standId).toBeNull();
    const answer = await bench.send('POST', '/api/plants', {
      name: 'A',
      kind: 'other',
      standId: bench.stand.id,
    });
    expect(answer.body.detail).toBe(
      'The stand “Potting bench” is put away. Bring it back first, or choose another.',
    );
    await bench.send('POST', `${bench.address}/bring-back`);
    expect(await bench.now()).toMatchObject({ putAway: false, plants: 1 });
    bench.turnDayTo('2026-03-08');
    expect((await bench.photograph(plant.id, 2)).standId).toBe(bench.stand.id);
  });
});

describe('the empty photo of a stand', () => {
  it('is looked at at once, served, measured against, and the frame’s reference', async () => {
    const bench = await standBench({ sheet: SHEET, scaleFrom: 'sheet', cameraDistanceMm: 1800 });
    const put = await bench.giveEmptyPhoto();
    expect(put.status).toBe(200);
    const { emptyPhoto, reference } = standSchema.parse(put.body);
    expect(emptyPhoto).toMatchObject({ widthPx: 640, heightPx: 480, check: { good: true } });
    expect(reference).toBe('empty-photo');
    expect(bench.checkedEmpty).toEqual([
      { path: expect.stringMatching(/incoming.+\.upload$/), sheet: SHEET },
    ]);
    for (const url of [emptyPhoto?.url, `${bench.address}/empty-photo`]) {
      const picture = await bench.send('GET', `${url}?width=320`);
      expect([picture.status, picture.headers.get('content-type')]).toEqual([200, 'image/jpeg']);
    }
    const plant = await bench.addPlant({ standId: bench.stand.id });
    await bench.photograph(plant.id, 1);
    const [task] = bench.measured;
    expect(task?.emptyPath).toMatch(/photos.+\.jpg$/);
    expect(task?.stand).toEqual({ referencePath: task?.emptyPath, sheet: SHEET, cameraDistanceMm: 1800 });
  });

  it('that cannot be read is refused, and the one before stays', async () => {
    const bench = await standBench();
    await bench.giveEmptyPhoto();
    const before = await bench.now();
    const form = new FormData();
    form.append('photo', new Blob(['not a photo']), 'empty.jpg');
    const put = await bench.send('PUT', `${bench.address}/empty-photo`, form);
    expect([put.status, put.body.detail]).toEqual([
      422,
      'This file is text, whatever its name says. Send the photo as JPEG, PNG, WebP or HEIC.',
    ]);
    const none = await bench.send('PUT', `${bench.address}/empty-photo`, new FormData());
    expect(none.body.detail).toBe('No photo was sent. Send it as multipart/form-data in the field "photo".');
    expect(await bench.now()).toEqual(before);
  });

  it('begins a new version once photos were taken; theirs stays theirs', async () => {
    const bench = await standBench();
    await bench.giveEmptyPhoto(9);
    const plant = await bench.addPlant({ standId: bench.stand.id });
    const view = await bench.photograph(plant.id, 1);
    bench.turnDayTo('2026-03-08');
    await bench.giveEmptyPhoto(10);
    expect(words(await bench.now())[0]).toBe('The empty photo was taken anew.');
    await bench.photograph(plant.id, 2);
    await bench.send('POST', `/api/views/${view.id}/measure`);
    await bench.services.queue.whenIdle();
    const [first, second, again] = bench.measured.map(({ emptyPath }) => emptyPath);
    expect(second).not.toBe(first);
    expect(again).toBe(first);
    await bench.send('DELETE', `${bench.address}/empty-photo`);
    const gone = await bench.now();
    expect([gone.version, gone.emptyPhoto]).toEqual([3, null]);
    expect((await bench.send('GET', `${bench.address}/empty-photo`)).status).toBe(404);
  });

  it('no longer counts once the camera, the backdrop or the sheet is another', async () => {
    for (const change of [
      { cameraDistanceMm: 1700 },
      { backdrop: 'black cloth' },
      { sheet: { ...SHEET, place: 'bench' } },
    ]) {
      const bench = await standBench({ cameraDistanceMm: 1500, backdrop: 'grey wall', sheet: SHEET });
      await bench.giveEmptyPhoto();
      const stand = await bench.change(change);
      expect(stand).toMatchObject({ version: 2, emptyPhoto: null, reference: null });
      expect(words(stand)[0]).toContain('The empty photo of before no longer counts.');
    }
  });

  it('stays when something is only told that was not known before, and is looked at anew for the sheet', async () => {
    const bench = await standBench();
    await bench.giveEmptyPhoto();
    const stand = await bench.change({ cameraDistanceMm: 1700, backdrop: 'black cloth', sheet: SHEET });
    expect(stand.reference).toBe('empty-photo');
    expect(bench.checkedEmpty.map(({ sheet }) => sheet)).toEqual([null, SHEET]);
  });

  it('goes before a plant’s own, which counts where the stand has none', async () => {
    const bench = await standBench();
    const plant = await bench.addPlant({ standId: bench.stand.id });
    const own = new FormData();
    own.append('photo', new Blob([new Uint8Array(await plantJpeg(20, { plantsAt: [] }))]), 'own.jpg');
    expect((await bench.send('PUT', `/api/plants/${plant.id}/empty-photo`, own)).status).toBe(200);
    await bench.photograph(plant.id, 1);
    bench.turnDayTo('2026-03-08');
    await bench.giveEmptyPhoto();
    await bench.photograph(plant.id, 2);
    const [ofPlant, ofStand] = bench.measured.map(({ emptyPath }) => emptyPath);
    expect(ofPlant).not.toBeNull();
    expect(ofStand).toMatch(/photos.+\.jpg$/);
    expect(ofStand).not.toBe(ofPlant);
    const again = await bench.send('PUT', `/api/plants/${plant.id}/empty-photo`, own);
    expect([again.status, again.body.detail]).toEqual([
      409,
      'This plant stands on “Potting bench”, whose own empty photo counts. Give the new empty photo to the stand.',
    ]);
  });
});

describe('a stand without an empty photo', () => {
  it('brings photos in line with the first one taken on it', async () => {
    const bench = await standBench();
    const plant = await bench.addPlant({ standId: bench.stand.id });
    await bench.photograph(plant.id, 1);
    bench.turnDayTo('2026-03-08');
    await bench.photograph(plant.id, 2);
    const [first, second] = bench.measured;
    expect(first?.stand.referencePath).toBe(first?.path);
    expect(second?.stand.referencePath).toBe(first?.path);
    expect(second?.emptyPath).toBeNull();
    expect((await bench.now()).reference).toBe('first-photo');
  });

  it('goes on with the next photo, and measures anew, should the first be removed', async () => {
    const bench = await standBench();
    const plant = await bench.addPlant({ standId: bench.stand.id });
    const first = await bench.photograph(plant.id, 1);
    bench.turnDayTo('2026-03-08');
    await bench.photograph(plant.id, 2);
    await bench.send('DELETE', `/api/views/${first.id}`);
    await bench.services.queue.whenIdle();
    const again = bench.measured.at(-1);
    expect(again?.photoName).toBe('2.jpg');
    expect(again?.stand.referencePath).toBe(again?.path);
  });

  it('keeps its first photo over a change that moves nothing', async () => {
    const bench = await standBench({ lightSide: 'left', cameraDistanceMm: 1500 });
    const plant = await bench.addPlant({ standId: bench.stand.id });
    await bench.photograph(plant.id, 1);
    await bench.change({ lightSide: 'right' });
    bench.turnDayTo('2026-03-08');
    await bench.photograph(plant.id, 2);
    expect(bench.measured[1]?.stand.referencePath).toBe(bench.measured[0]?.path);
    await bench.change({ cameraDistanceMm: 1600 });
    bench.turnDayTo('2026-03-15');
    await bench.photograph(plant.id, 3);
    expect(bench.measured[2]?.stand.referencePath).toBe(bench.measured[2]?.path);
  });
});

describe('a plant put on a stand', () => {
  it('keeps earlier sittings as they were, and today’s goes along', async () => {
    const bench = await standBench();
    const plant = await bench.addPlant();
    await bench.photograph(plant.id, 1, '2026-02-20');
    await bench.photograph(plant.id, 2);
    await bench.send('PATCH', `/api/plants/${plant.id}`, { standId: bench.stand.id });
    await bench.services.queue.whenIdle();
    const { sittings, plant: now } = await page(bench, plant.id);
    expect(now.standId).toBe(bench.stand.id);
    expect(sittings.map(({ day, standId }) => [day, standId])).toEqual([
      ['2026-03-01', bench.stand.id],
      ['2026-02-20', null],
    ]);
    expect(bench.measured.map(({ photoName }) => photoName)).toEqual(['1.jpg', '2.jpg', '2.jpg']);
  });

  it('may have one sitting told to be from another stand, or none', async () => {
    const bench = await standBench();
    const plant = await bench.addPlant();
    const { sittingId } = await bench.photograph(plant.id, 1, '2026-02-20');
    const told = await bench.send('PATCH', `/api/sittings/${sittingId}`, { standId: bench.stand.id });
    expect(told.body).toMatchObject({ id: sittingId, standId: bench.stand.id, standVersion: 1 });
    await bench.services.queue.whenIdle();
    expect(bench.measured).toHaveLength(2);
    const none = await bench.send('PATCH', `/api/sittings/${sittingId}`, { standId: null });
    expect(none.body).toMatchObject({ standId: null, standVersion: null });
    expect((await bench.now()).reference).toBeNull();
    expect((await bench.send('PATCH', '/api/sittings/no-such-sitting', { standId: null })).status).toBe(404);
  });

  it('is measured for its stand after its day was mended', async () => {
    const bench = await standBench();
    const plant = await bench.addPlant({ standId: bench.stand.id });
    const view = await bench.photograph(plant.id, 1);
    bench.turnDayTo('2026-04-01');
    await bench.change({ lightSide: 'above' });
    const moved = await bench.send('PATCH', `/api/views/${view.id}`, { day: '2026-04-01' });
    expect(moved.body.standVersion).toBe(2);
    await bench.services.queue.whenIdle();
    expect(bench.measured).toHaveLength(2);
  });
});

describe('what lies over the live picture', () => {
  const outlinePx = [
    [330, 240],
    [340, 240],
    [340, 250],
  ] as const;
  const frame = {
    from: 'features',
    shiftPx: [10, 0],
    shiftMm: null,
    turnDeg: 0,
    zoom: 1,
    standing: 'moved',
    words: 'The camera stands a little further left than on the first day.',
  } as const;

  it('is the last silhouette in the stand’s frame, its rim and the rings', async () => {
    const bench = await standBench(
      {},
      {
        measure: async (task) => ({
          ...sampleMeasurement(task),
          outlinePx,
          report: sampleReport(task.photoName, {
            frame,
            axis: { xPx: 330, rimLeftPx: [300, 400], rimRightPx: [360, 400], rimEllipse: null },
          }),
        }),
        emptyCheck: {
          check: { good: true, brightness: 'good', sharpness: 'good', words: 'Good.' },
          reading: {
            marksFound: 1,
            marksOfSheet: 5,
            mmPerPxAtSheet: null,
            cameraDistanceMm: null,
            greyFound: false,
            marksPx: [[50, 60]],
            words: 'One ring.',
          },
        },
      },
    );
    const plant = await bench.addPlant({ standId: bench.stand.id });
    const none = await bench.send('GET', `${bench.address}/overlay?plant=${plant.id}`);
    expect([none.status, none.body.detail]).toEqual([
      404,
      'There is no photo yet of this stand as it is now. Take the empty photo of it first.',
    ]);
    await bench.giveEmptyPhoto();
    const bare = standOverlaySchema.parse((await bench.send('GET', `${bench.address}/overlay`)).body);
    expect(bare).toMatchObject({
      widthPx: 640,
      heightPx: 480,
      outlinePx: [],
      rim: null,
      marksPx: [[50, 60]],
    });
    await bench.photograph(plant.id, 1);
    const { body } = await bench.send('GET', `${bench.address}/overlay?plant=${plant.id}`);
    const overlay = standOverlaySchema.parse(body);
    expect(overlay.outlinePx).toEqual(outlinePx.map(([x, y]) => [x - 10, y]));
    expect(overlay.rim).toEqual({ leftPx: [290, 400], rightPx: [350, 400] });
    expect(overlay.outlineDay).toBe('2026-03-01');
    // The light alone changes no frame.
    await bench.change({ lightSide: 'right' });
    const later = await bench.send('GET', `${bench.address}/overlay?plant=${plant.id}`);
    expect(later.body).toEqual(overlay);
    expect((await bench.send('GET', overlay.photoUrl)).headers.get('content-type')).toBe('image/jpeg');
  });

  it('leaves out a silhouette that was seen from afar', async () => {
    const bench = await standBench(
      {},
      {
        measure: async (task) => ({
          ...sampleMeasurement(task),
          report: sampleReport(task.photoName, { frame: { ...frame, standing: 'far' } }),
        }),
      },
    );
    const plant = await bench.addPlant({ standId: bench.stand.id });
    await bench.photograph(plant.id, 1);
    const { body } = await bench.send('GET', `${bench.address}/overlay?plant=${plant.id}`);
    expect(body).toMatchObject({
      outlinePx: [],
      outlineDay: null,
      photoUrl: expect.stringContaining('/views/'),
    });
  });
});

describe('the page of a plant', () => {
  it('says which way each score goes, and with few sittings that it cannot', async () => {
    const scores = [82, 84, 86, 88, 90, 92];
    const bench = await standBench(
      {},
      {
        measure: async (task) => ({
          ...sampleMeasurement(task),
          report: sampleReport(task.photoName, { roundness: { score: scores.shift() ?? 0, plusMinus: 1 } }),
        }),
      },
    );
    const plant = await bench.addPlant();
    for (let week = 0; week < 6; week++) {
      if (week === 3)
        expect((await page(bench, plant.id)).trends.roundness.segments[0]?.direction).toBeNull();
      const bytes = await cameraJpeg(`2026:01:${String(1 + 4 * week).padStart(2, '0')} 10:00:00`, {
        seed: week,
      });
      await bench.upload(plant.id, [{ name: `${week}.jpg`, bytes }]);
      await bench.services.queue.whenIdle();
    }
    const { trends } = await page(bench, plant.id);
    expect(trends.roundness.segments).toMatchObject([{ n: 6, direction: 'rising', fromDay: '2026-01-01' }]);
    expect(trends.roundness.segments[0]?.slopePerWeek).toBeCloseTo(3.5, 6);
    expect(trends.symmetry.segments[0]?.direction).toBe('no change');
    await bench.send('POST', `/api/plants/${plant.id}/stops`, { day: '2026-01-10', depth: 'tip' });
    expect((await page(bench, plant.id)).trends.roundness.segments.map(({ n }) => n)).toEqual([3, 3]);
  });
});
