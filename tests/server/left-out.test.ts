import { describe, expect, it } from 'vitest';
import { type PlantPage, plantPageSchema } from '../../server/schemas/pages.ts';
import { openBench, sampleMeasurement, sampleReport } from './fixtures/open-bench.ts';
import { cameraJpeg } from './fixtures/photos.ts';

const WHY = 'The camera stands about 9 cm further left than on the first day.';

/** The page of a plant photographed on these days, with its stops; on far days the camera stood elsewhere, some the grower keeps out. */
async function pageOf(
  days: readonly string[],
  {
    far,
    stops = [],
    leftOut = [],
  }: {
    readonly far: readonly string[];
    readonly stops?: readonly string[];
    readonly leftOut?: readonly string[];
  },
): Promise<PlantPage> {
  const { send, addPlant, upload, services } = await openBench({
    measure: async (task) => {
      const isFar = far.includes(task.photoName.replace('.jpg', ''));
      const report = sampleReport(task.photoName, isFar ? { notCompared: WHY } : {});
      return { ...sampleMeasurement(task), report };
    },
  });
  const plant = await addPlant();
  for (const [k, day] of days.entries()) {
    const bytes = await cameraJpeg(`${day.replaceAll('-', ':')} 10:00:00`, { seed: k + 1 });
    await upload(plant.id, [{ name: `${day}.jpg`, bytes }]);
  }
  for (const day of stops) await send('POST', `/api/plants/${plant.id}/stops`, { day, depth: 'tip' });
  await services.queue.whenIdle();
  const page = async () => plantPageSchema.parse((await send('GET', `/api/plants/${plant.id}`)).body);
  for (const { id, day } of (await page()).sittings) {
    if (leftOut.includes(day)) await send('PATCH', `/api/sittings/${id}`, { leftOut: 'limp from drought' });
  }
  return page();
}

describe('a photo taken from elsewhere', () => {
  it('leaves a gap in the trend and says why', async () => {
    const { trend, trends, advice } = await pageOf(['2026-05-10', '2026-05-17', '2026-05-24'], {
      far: ['2026-05-17'],
    });
    expect(trend.map(({ roundness, radiusMm, leftOut }) => [roundness, radiusMm, leftOut])).toEqual([
      [91.5, null, null],
      [null, null, WHY],
      [91.5, null, null],
    ]);
    for (const { segments } of Object.values(trends)) {
      expect(segments).toMatchObject([{ n: 2, fromDay: '2026-05-10', toDay: '2026-05-24' }]);
      expect(segments[0]?.why).toContain('Left out, because the camera stood elsewhere: 17 May 2026.');
    }
    expect(advice.map(({ kind }) => kind)).not.toContain('photograph');
  });

  it('is named in its own stretch between stops only', async () => {
    const days = ['2026-05-03', '2026-05-10', '2026-05-17', '2026-05-24'];
    const { trends } = await pageOf(days, { far: ['2026-05-10'], stops: ['2026-05-12'] });
    const [before, since] = trends.roundness.segments;
    expect(before?.why).toContain('10 May 2026');
    expect(since?.why).not.toContain('Left out');
  });

  it('is told apart from one that the grower keeps out', async () => {
    const days = ['2026-05-10', '2026-05-17', '2026-05-24', '2026-05-31'] as const;
    const { trends } = await pageOf(days, { far: ['2026-05-17'], leftOut: ['2026-05-24'] });
    const { segments } = trends.roundness;
    expect(segments[0]?.why).toContain('the camera stood elsewhere: 17 May 2026.');
    expect(segments[0]?.why).toContain('Left out by you: 24 May 2026.');
  });

  it('is asked for again when it is the newest', async () => {
    const { advice } = await pageOf(['2026-05-24', '2026-05-31'], { far: ['2026-05-31'] });
    expect(advice[0]).toMatchObject({
      kind: 'photograph',
      what: 'Take the photo again from the camera’s old place.',
    });
    expect(advice[0]?.why).toContain(WHY);
  });
});
