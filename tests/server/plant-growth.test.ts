import { describe, expect, it } from 'vitest';
import { cutListSchema } from '../../server/schemas/cuts.ts';
import { plantPageSchema } from '../../server/schemas/pages.ts';
import { reportWithStems } from './fixtures/long-stems.ts';
import { openBench, sampleMeasurement } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';

const WEEKS = ['2026-04-05', '2026-04-12', '2026-04-19', '2026-04-26', '2026-05-03', '2026-05-10'];
const RADII = [80, 92, 102, 110, 116, 120];

/** The growth of a plant photographed once, beside another plant photographed every week. */
async function growthBeside(other: object) {
  const { addPlant, upload, send, services } = await openBench({
    // The photo's name is the ball's radius in mm.
    measure: async (task) => {
      const { ball } = reportWithStems([]);
      const radiusMm = Number(task.photoName.replace('.jpg', ''));
      return {
        ...sampleMeasurement(task),
        report: reportWithStems([], { ball: ball && { ...ball, radiusMm, radiusPlusMinusMm: 3 } }),
      };
    },
  });
  const plant = await addPlant({ variety: 'Plum Dusk' });
  const beside = await addPlant({ name: 'Other', variety: 'Plum Dusk', ...other });
  let seed = 0;
  const photograph = async (plantId: string, radiusMm: number, day: string) => {
    seed += 1;
    await upload(plantId, [{ name: `${radiusMm}.jpg`, bytes: await plantJpeg(seed) }], { day });
  };
  for (const [week, day] of WEEKS.entries()) await photograph(beside.id, RADII[week] ?? 0, day);
  await photograph(plant.id, 90, '2026-05-31');
  await services.queue.whenIdle();
  const page = plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
  const { body } = await send('GET', `/api/sittings/${page.sittings[0]?.id}/cut-list`);
  return cutListSchema.parse(body).growth;
}

describe('the growth beside a cut list', () => {
  it('learns from other plants of the variety, however it is spelt', async () => {
    const growth = await growthBeside({ variety: ' plum dusk' });
    expect(growth).toMatchObject({ restsOn: 'variety', sittings: 1, sureness: 'unsure' });
    expect(growth?.why).toContain('how other plants of its variety grew');
  });

  it('does not learn from another variety or kind', async () => {
    expect((await growthBeside({ variety: 'Grey Morning' }))?.restsOn).toBe('guess');
    expect((await growthBeside({ kind: 'zonal' }))?.restsOn).toBe('guess');
  });
});
