import { describe, expect, it } from 'vitest';
import type { NormalLeaf } from '../../core/foliage/normal-leaf.ts';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import { foliage } from '../core/foliage/leaf-seen.ts';
import { openBench, sampleMeasurement, sampleReport } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';

/** A look of which only the lightness of the leaf is told apart. */
const look = (l: number, from: NormalLeaf['from'] = 'backdrop'): NormalLeaf => ({
  photos: 1,
  from,
  leafColour: { l, a: -20, b: 25 },
  hueShares: Array.from({ length: 210 }, (_, k) => (k === 100 ? 1 : 0)),
});

const DAYS = ['2026-05-01', '2026-05-08', '2026-05-15', '2026-05-22', '2026-05-29'];

/** A plant whose photos look as told, oldest first; yellow is what each reads. */
async function season({
  looks = [40, 42, 44, 46, 48],
  white = [],
  yellow = [],
}: {
  readonly looks?: readonly number[];
  readonly white?: readonly NormalLeaf['from'][];
  readonly yellow?: readonly number[];
} = {}) {
  const bench = await openBench({
    measure: async (task) => {
      const week = DAYS.findIndex((day) => task.photoName.startsWith(day));
      const against = task.normalLeaf === null ? 'usual' : 'own';
      return {
        ...sampleMeasurement(task),
        report: sampleReport(task.photoName, {
          foliage: foliage({ yellow: yellow[week] ?? 0.01 }, { against }),
        }),
        leafLook: look(looks[week] ?? 0, white[week]),
      };
    },
  });
  const plant = await bench.addPlant();
  for (const [seed, day] of DAYS.entries()) {
    if (seed >= looks.length) break;
    await bench.upload(plant.id, [{ name: `${day}.jpg`, bytes: await plantJpeg(seed + 1) }], { day });
  }
  await bench.services.queue.whenIdle();
  const page = async () => plantPageSchema.parse((await bench.send('GET', `/api/plants/${plant.id}`)).body);
  return {
    ...bench,
    plant,
    page,
    async learnedFrom() {
      const { sittings } = await page();
      return sittings.toReversed().map(({ views }) => views[0]?.normalLeafFrom ?? null);
    },
    async healthy(day: string, healthy = true) {
      const answer = await bench.send('PUT', `/api/plants/${plant.id}/healthy-days/${day}`, { healthy });
      await bench.services.queue.whenIdle();
      return answer;
    },
  };
}

const FIRST_THREE = DAYS.slice(0, 3);

describe('the normal leaf of a plant', () => {
  it('is learned from its first three sittings, and later photos are judged by it', async () => {
    const { measured, learnedFrom, page } = await season();
    expect(await learnedFrom()).toEqual([null, null, null, FIRST_THREE, FIRST_THREE]);
    const last = measured.findLast(({ photoName }) => photoName.startsWith(DAYS[4] as string));
    expect(last?.normalLeaf).toMatchObject({ photos: 3, from: 'backdrop', leafColour: { l: 42 } });
    const { leaf } = await page();
    expect(leaf?.learned).toMatchObject({ state: 'learned', days: FIRST_THREE, wanted: 3, healthyDays: [] });
    expect(leaf?.newest?.against).toBe('own');
  });

  it('is not known before the third', async () => {
    const { page } = await season({ looks: [40, 42] });
    const { leaf } = await page();
    expect(leaf?.learned).toMatchObject({ state: 'not-yet', days: DAYS.slice(0, 2) });
    expect(leaf?.learned.words).toContain('first 3 sittings whose white is known: 2 so far');
    expect(leaf?.newest?.against).toBe('usual');
  });

  it('is of one white throughout', async () => {
    const { learnedFrom } = await season({
      white: ['backdrop', 'sheet', 'sheet', 'sheet', 'sheet'],
    });
    expect(await learnedFrom()).toEqual([null, null, null, null, DAYS.slice(1, 4)]);
  });

  it('is learned anew from a day that the grower calls healthy, and the later photos with it', async () => {
    const { healthy, learnedFrom } = await season();
    const answer = await healthy(DAYS[3] as string);
    expect(answer.body).toMatchObject({ state: 'learned', days: [DAYS[3]], healthyDays: [DAYS[3]] });
    expect(answer.body.words).toContain('which you called healthy');
    expect(await learnedFrom()).toEqual([null, null, null, FIRST_THREE, [DAYS[3]]]);
    await healthy(DAYS[3] as string, false);
    expect(await learnedFrom()).toEqual([null, null, null, FIRST_THREE, FIRST_THREE]);
  });

  it('cannot be learned from a day without a photo', async () => {
    const { healthy } = await season({ looks: [40] });
    const { status, body } = await healthy('2026-05-02');
    expect(status).toBe(422);
    expect(body.detail).toContain('No photo of 2 May 2026 can teach what is normal');
    expect((await healthy('yesterday')).status).toBe(422);
  });

  it('leaves out a sitting that the grower left out', async () => {
    const { page, send, services, learnedFrom } = await season();
    const first = (await page()).sittings.at(-1);
    await send('PATCH', `/api/sittings/${first?.id}`, { leftOut: 'limp when photographed' });
    await services.queue.whenIdle();
    expect(await learnedFrom()).toEqual([null, null, null, null, DAYS.slice(1, 4)]);
  });

  it('is kept when a photo is cut anew with strokes', async () => {
    const { page, send, corrected, services } = await season();
    const view = (await page()).sittings[0]?.views[0];
    const strokes = [{ kind: 'remove', widthPx: 9, pointsPx: [[50, 50]] }];
    await send('PUT', `/api/views/${view?.id}/strokes`, { strokes });
    await services.queue.whenIdle();
    expect(corrected.at(-1)?.normalLeaf).toMatchObject({ photos: 3, leafColour: { l: 42 } });
    expect((await page()).sittings[0]?.views[0]?.normalLeafFrom).toEqual(FIRST_THREE);
  });

  it('does not measure anything twice that was judged by it already', async () => {
    const { measured, services } = await season();
    const before = measured.length;
    services.queue.wake();
    await services.queue.whenIdle();
    expect(measured).toHaveLength(before);
  });
});

describe('yellow leaf on a plant’s page', () => {
  it('is held against the sitting before, and advised on when it has risen', async () => {
    const { page, send, plant } = await season({ yellow: [0.01, 0.01, 0.01, 0.02, 0.1] });
    const { leaf, advice } = await page();
    expect(leaf?.before?.day).toBe(DAYS[3]);
    expect(leaf?.words).toContain('Yellow leaf rose from 2 % (± 2) to 10 % (± 2) since 22 May 2026');
    expect(leaf?.changes[0]).toMatchObject({ tone: 'yellow', direction: 'up' });
    expect(leaf?.history.map(({ day }) => day)).toEqual(DAYS);
    expect(advice.find(({ kind }) => kind === 'clear')?.what).toBe('Clear the yellow leaves.');

    await send('POST', `/api/plants/${plant.id}/notes`, { day: '2026-06-01', kind: 'cleared-leaf' });
    expect((await page()).advice.map(({ kind }) => kind)).not.toContain('clear');
  });

  it('is not held against a photo that was judged by what is usual', async () => {
    const { page } = await season({ looks: [40, 42, 44, 46], yellow: [0.01, 0.01, 0.01, 0.1] });
    const { leaf, advice } = await page();
    expect(leaf?.before).toBeNull();
    expect(advice.map(({ kind }) => kind)).not.toContain('clear');
  });
});
