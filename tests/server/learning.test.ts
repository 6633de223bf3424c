import { describe, expect, it } from 'vitest';
import type { PhotoReport } from '../../core/report.ts';
import type { MeasureTask } from '../../server/measuring/measure-file.ts';
import { onlyEntry } from './fixtures/client.ts';
import { type BenchOptions, openBench, sampleMeasurement, sampleReport } from './fixtures/open-bench.ts';
import { plantJpeg } from './fixtures/photos.ts';

const DAYS = ['2026-05-03', '2026-05-10', '2026-05-17'] as const;

/** A plant with a photo a day, all measured; `facts` go into every report. */
async function season(
  days: readonly string[] = DAYS,
  { facts = {}, ...options }: BenchOptions & { readonly facts?: Partial<PhotoReport> } = {},
) {
  const bench = await openBench({
    measure: async (task) => ({ ...sampleMeasurement(task), report: sampleReport(task.photoName, facts) }),
    ...options,
  });
  const plant = await bench.addPlant();
  const paths: string[] = [];
  for (const [seed, day] of days.entries()) {
    const file = { name: `${day}.jpg`, bytes: await plantJpeg(seed + 1) };
    const entry = onlyEntry(await bench.upload(plant.id, [file], { day }));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    paths.push(`/api/views/${entry.view.id}`);
    await bench.services.queue.whenIdle();
  }
  bench.measured.length = 0;
  return {
    ...bench,
    plant,
    paths,
    async accept(at: number, accepted = true) {
      const answer = await bench.send('PUT', `${paths[at]}/accepted`, { accepted });
      if (answer.status !== 200) throw new Error(JSON.stringify(answer.body));
      expect(answer.body.acceptedOutline).toBe(accepted);
      await bench.services.queue.whenIdle();
    },
  };
}

const taught = ({ photoName, colours }: MeasureTask) => [
  photoName.slice(0, 10),
  colours && new TextDecoder().decode(colours),
];

describe('an outline that is called right', () => {
  it('teaches the plant’s colours to the later photos, not to itself or an earlier one', async () => {
    const { accept, measured, learned } = await season();
    await accept(1);
    expect(measured.map(taught)).toEqual([['2026-05-17', 'taught by 1']]);
    expect(learned.map((lessons) => lessons.length)).toEqual([1]);

    measured.length = 0;
    await accept(0);
    // The second photo was called right, so it stays; the third learns from both, the older one first.
    expect(measured.map(taught)).toEqual([['2026-05-17', 'taught by 2']]);
  });

  it('takes its teaching back when it is no longer called right', async () => {
    const { accept, measured, learned } = await season();
    await accept(0);
    expect(measured.map(taught)).toEqual([
      ['2026-05-10', 'taught by 1'],
      ['2026-05-17', 'taught by 1'],
    ]);
    measured.length = 0;
    await accept(0, false);
    expect(measured.map(taught)).toEqual([
      ['2026-05-10', null],
      ['2026-05-17', null],
    ]);
    expect(measured.every(({ lastOutline }) => lastOutline === null)).toBe(true);
    expect(learned).toHaveLength(1);
  });

  it('takes its teaching back when strokes change it, and when its photo is removed', async () => {
    const { accept, measured, send, paths, services } = await season();
    const drawn = { kind: 'remove', widthPx: 9, pointsPx: [[50, 50]] };
    await accept(1);
    measured.length = 0;
    const mended = await send('PUT', `${paths[1]}/strokes`, { strokes: [drawn] });
    expect(mended.body.acceptedOutline).toBe(false);
    await services.queue.whenIdle();
    expect(measured.map(taught)).toEqual([['2026-05-17', null]]);

    await accept(1);
    measured.length = 0;
    await send('DELETE', paths[1] ?? '');
    await services.queue.whenIdle();
    expect(measured.map(taught)).toEqual([['2026-05-17', null]]);
  });

  it('is laid over the next photos of the same turn, up to four weeks on', async () => {
    const axis = {
      xPx: 320,
      rimLeftPx: [160, 360],
      rimRightPx: [480, 360],
      rimEllipse: null,
    } as const;
    const { accept, measured } = await season(['2026-05-03', '2026-05-10', '2026-05-31', '2026-06-01'], {
      facts: { axis },
    });
    await accept(0);
    expect(measured.map(({ photoName, lastOutline }) => [photoName, lastOutline?.days ?? null])).toEqual([
      ['2026-05-10.jpg', 7],
      ['2026-05-31.jpg', 28],
      ['2026-06-01.jpg', null],
    ]);
    expect(measured[0]?.lastOutline?.rim).toEqual([
      [0.25, 0.75],
      [0.75, 0.75],
    ]);
  });

  it('lets later photos be measured once and no more', async () => {
    const { accept, measured, services } = await season();
    await accept(0);
    await services.queue.whenIdle();
    expect(measured).toHaveLength(2);
    await accept(0);
    expect(measured).toHaveLength(2);
  });

  it('cannot be called right before there is one', async () => {
    const { send, paths } = await season(['2026-05-03'], {
      measure: async (task) => ({ ...sampleMeasurement(task), maskPng: null, outlinePx: [] }),
    });
    const answer = await send('PUT', `${paths[0]}/accepted`, { accepted: true });
    expect([answer.status, answer.body.detail]).toEqual([
      409,
      'There is no outline yet that could be right. Let the photo be measured, or mend its outline, first.',
    ]);
    expect((await send('PUT', `${paths[0]}/accepted`, {})).body.errors).toEqual([
      { pointer: '/accepted', detail: 'Say whether the outline is right: true or false.' },
    ]);
  });
});

describe('an outline that nobody called right', () => {
  it('is laid over the next photo when it is sure enough, and only then', async () => {
    const { measured, send, paths, services } = await season(DAYS, { facts: { confidence: 0.9 } });
    await send('POST', `${paths[2]}/measure`);
    await services.queue.whenIdle();
    expect(measured.map(({ lastOutline }) => lastOutline?.days)).toEqual([7]);

    const doubtful = await season(DAYS, { facts: { confidence: 0.89 } });
    await doubtful.send('POST', `${doubtful.paths[2]}/measure`);
    await doubtful.services.queue.whenIdle();
    expect(doubtful.measured.map(({ lastOutline }) => lastOutline)).toEqual([null]);
  });
});

describe('strokes on a photo', () => {
  it('build on what was known when it was measured, though more is known since', async () => {
    const { send, upload, plant, paths, corrected, services } = await season(['2026-05-10'], {
      facts: { confidence: 0.95 },
    });
    const drawn = { kind: 'remove', widthPx: 9, pointsPx: [[50, 50]] };
    await upload(plant.id, [{ name: 'earlier.jpg', bytes: await plantJpeg(9) }], { day: '2026-05-03' });
    await services.queue.whenIdle();
    await send('PUT', `${paths[0]}/strokes`, { strokes: [drawn] });
    expect(corrected.map(({ lastOutline }) => lastOutline)).toEqual([null]);
    await send('POST', `${paths[0]}/measure`);
    await services.queue.whenIdle();
    await send('PUT', `${paths[0]}/strokes`, { strokes: [drawn, drawn] });
    expect(corrected.at(-1)?.lastOutline?.days).toBe(7);
  });
});
