import { join } from 'node:path';
import pino from 'pino';
import { describe, expect, it, onTestFinished, vi } from 'vitest';
import type { CorrectionTask } from '../../server/measuring/correction-worker.ts';
import { createCorrections } from '../../server/measuring/corrections.ts';
import type { MeasuredFile } from '../../server/measuring/measure-file.ts';
import { openWorkerPool } from '../../server/measuring/worker-pool.ts';
import { dueViewById, setStrokes } from '../../server/store/due-view.ts';
import { createLateWrites } from '../../server/store/late-writes.ts';
import { viewById } from '../../server/store/views.ts';
import { onlyEntry } from '../server/fixtures/client.ts';
import { openBench, sampleMeasurement, temporaryFolder } from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';

/** A measured photo of a bench, and corrections over the same store whose thread dies. */
async function dyingCorrections(dies: 'once' | 'always') {
  const remembered = join(temporaryFolder(), 'died');
  vi.stubEnv('DYING_WORKER_FILE', remembered);
  vi.stubEnv('DYING_WORKER_ALWAYS', dies === 'always' ? 'yes' : 'no');
  vi.stubEnv('RONDURE_NETWORK', 'off');
  onTestFinished(() => void vi.unstubAllEnvs());
  const { addPlant, upload, services } = await openBench({ network: false });
  const { db, home, progress } = services;
  const plant = await addPlant();
  const entry = onlyEntry(await upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
  if (entry.outcome !== 'kept') throw new Error(entry.detail);
  await services.queue.whenIdle();
  let opened = 0;
  const corrections = createCorrections({
    db,
    home,
    progress,
    network: false,
    log: pino({ level: 'silent' }),
    lateWrites: createLateWrites(pino({ level: 'silent' })),
    learn: async () => null,
    openPool: () => {
      opened += 1;
      return openWorkerPool<CorrectionTask, MeasuredFile | null>(
        new URL('fixtures/dying-worker.ts', import.meta.url),
        { threads: 1 },
      );
    },
  });
  onTestFinished(() => corrections.close());
  return { db, corrections, id: entry.view.id, opened: () => opened };
}

const STROKES = [{ kind: 'remove' as const, widthPx: 40, pointsPx: [[320, 150] as [number, number]] }];

describe('the correction thread', () => {
  it('that dies is started anew, and the strokes are measured all the same', async () => {
    const { db, corrections, id, opened } = await dyingCorrections('once');
    setStrokes(db, id, STROKES);
    await corrections.recut(id);
    expect(opened()).toBe(1);
    expect(viewById(db, id)).toMatchObject({ state: 'measured', strokes: STROKES, failure: null });
    expect(viewById(db, id)?.outlinePx?.length).toBeGreaterThan(50);
  });

  it('that dies each time leaves the strokes kept and the photo marked as failed', async () => {
    const { db, corrections, id } = await dyingCorrections('always');
    setStrokes(db, id, STROKES);
    await expect(corrections.recut(id)).rejects.toThrow();
    expect(viewById(db, id)).toMatchObject({
      state: 'failed',
      strokes: STROKES,
      failure:
        'This photo could not be measured: the measuring ended part-way, twice. The photo is safe; measure it again, or take another one.',
    });
    expect(dueViewById(db, id)?.strokes).toEqual(STROKES);
  });

  it('is opened with the first photo, closed when idle, and opened again', async () => {
    const events: string[] = [];
    const bench = await openBench();
    const plant = await bench.addPlant();
    const entry = onlyEntry(await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg(2) }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    const { db, home, progress, queue } = bench.services;
    await queue.whenIdle();
    const corrections = createCorrections({
      db,
      home,
      progress,
      network: true,
      log: pino({ level: 'silent' }),
      lateWrites: createLateWrites(pino({ level: 'silent' })),
      learn: async () => null,
      idleMs: 30,
      openPool: () => {
        events.push('opened');
        return {
          run: async ({ photo }) => sampleMeasurement(photo),
          close: async () => void events.push('closed'),
        };
      },
    });
    expect(events).toEqual([]);
    await corrections.warm(entry.view.id);
    expect(events).toEqual(['opened']);
    await expect.poll(() => events).toEqual(['opened', 'closed']);
    await corrections.warm(entry.view.id);
    await corrections.close();
    expect(events).toEqual(['opened', 'closed', 'opened', 'closed']);
  });
});
