import { describe, expect, it } from 'vitest';
import type { PhotoReport } from '../../core/report.ts';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import type { Sitting } from '../../server/schemas/sitting.ts';
import { keptFits } from '../../server/store/kept-fits.ts';
import { openBench, sampleMeasurement, sampleReport } from './fixtures/open-bench.ts';
import { cameraJpeg } from './fixtures/photos.ts';

const DAYS = ['2026-03-01', '2026-03-22', '2026-04-12', '2026-05-03', '2026-05-17', '2026-05-24'];
/** What the brief reports of old sittings lack, so that it would show in the page were it asked of them. */
const LONG: Partial<PhotoReport> = {
  gaps: {
    sectors: [{ clock: 3, gapFraction: 0.4, plusMinus: 0.02, isThin: true }],
    openBase: 0.2,
    openBasePlusMinus: 0.02,
    tightness: 0.9,
    tightnessPlusMinus: 0.02,
  },
  flower: { share: 0.2, plusMinus: 0.02, patchesMm2: [400, 900] },
};

/** A plant of six sittings; from `bare` on nothing was measured. */
async function manySittings({ bare = '2027-01-01' }: { readonly bare?: string } = {}) {
  const { send, addPlant, upload, services } = await openBench({
    measure: async (task) => {
      const report = sampleReport(task.photoName, LONG);
      if (task.photoName < bare) return { ...sampleMeasurement(task), report };
      return {
        ...sampleMeasurement(task),
        report: {
          ...report,
          status: 'no-canopy',
          gaps: null,
          flower: null,
          hint: 'None is seen.',
        },
      };
    },
  });
  const plant = await addPlant();
  for (const [k, day] of DAYS.entries()) {
    const bytes = await cameraJpeg(`${day.replaceAll('-', ':')} 10:00:00`, { seed: k + 1 });
    await upload(plant.id, [{ name: `${day}.jpg`, bytes }]);
  }
  await send('POST', `/api/plants/${plant.id}/stops`, { day: '2026-04-01', depth: 'tip' });
  await services.queue.whenIdle();
  const page = async (query = '') =>
    plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}${query}`)).body);
  return { send, plant, page, services };
}

describe('a page that is asked for few whole sittings', () => {
  it.each([
    ['with all measured', {}],
    ['with the newest not measured', { bare: '2026-05-01' }],
  ])('tells the same of the plant as one with all, %s', async (_which, options) => {
    const { page } = await manySittings(options);
    const { sittings, earlier, ...told } = await page();
    expect(earlier).toEqual([]);
    for (const count of [0, 1, 3]) {
      const few = await page(`?sittings=${count}`);
      expect({ ...few, sittings: [], earlier: [] }).toEqual({ ...told, sittings: [], earlier: [] });
      expect(few.sittings).toEqual(sittings.slice(0, count));
      expect(few.earlier.map(({ id, day, leftOut }) => ({ id, day, leftOut }))).toEqual(
        sittings.slice(count).map(({ id, day, leftOut }) => ({ id, day, leftOut })),
      );
      expect(few.earlier.flatMap(({ views }) => views.map(({ isMeasured }) => isMeasured))).toEqual(
        sittings
          .slice(count)
          .flatMap(({ views }) => views.map(({ report }) => report?.status === 'measured')),
      );
    }
  });

  it('leaves the older ones to be fetched whole by their days', async () => {
    const { send, plant, page } = await manySittings();
    const { sittings } = await page();
    const answer = await send('GET', `/api/plants/${plant.id}/sittings?from=2026-03-22&to=2026-05-03`);
    expect(answer.body as unknown as Sitting[]).toEqual(
      sittings.filter(({ day }) => day >= '2026-03-22' && day <= '2026-05-03'),
    );
  });

  it('follows when an old sitting is left out', async () => {
    const { send, page } = await manySittings();
    const before = await page('?sittings=1');
    await send('PATCH', `/api/sittings/${before.earlier[2]?.id}`, { leftOut: 'limp from drought' });
    const { sittings: _, earlier, ...after } = await page('?sittings=1');
    expect(earlier[2]?.leftOut).toBe('limp from drought');
    const { sittings: __, earlier: ___, ...whole } = await page();
    expect(after).toEqual(whole);
  });
});

describe('a fit that takes long', () => {
  it('is kept in the store, for its question alone', async () => {
    const { services } = await manySittings();
    const { kept, keep, settle } = keptFits(services.db);
    const rows = () => services.db.prepare('SELECT count(*) AS n FROM kept_fits').get() as { n: number };
    settle();
    const before = rows().n;
    expect(kept('test', { n: 1 })).toBeUndefined();
    keep('test', { n: 1 }, { told: 1 });
    expect(kept('test', { n: 1 })).toEqual({ told: 1 });
    settle();
    expect(rows().n).toBe(before + 1);
    expect([kept('test', { n: 1 }), kept('test', { n: 2 }), kept('other', { n: 1 })]).toEqual([
      { told: 1 },
      undefined,
      undefined,
    ]);
  });
});
