import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import type { MeasuredFile } from '../../server/measuring/measure-file.ts';
import { openWorkerPool, WORKER_POOL, type WorkerPoolOptions } from '../../server/measuring/worker-pool.ts';
import { onlyEntry } from '../server/fixtures/client.ts';
import { openBench, sampleMeasurement, temporaryFolder } from '../server/fixtures/open-bench.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';

function oddPool(options: Partial<WorkerPoolOptions> = {}) {
  const pool = openWorkerPool<null, number>(new URL('fixtures/odd-worker.ts', import.meta.url), {
    threads: 1,
    ...options,
  });
  onTestFinished(() => pool.close());
  return pool;
}

const remembered = () => join(temporaryFolder(), 'died');

describe('a worker thread', () => {
  it('that is killed in mid-job leaves its job to a fresh one, once', async () => {
    const pool = oddPool();
    const before = await pool.run(null);
    expect(await pool.call('die', remembered())).not.toBe(before);
    await expect(pool.call('die', null)).rejects.toMatchObject({ reason: 'thread-died' });
    expect(await pool.run(null)).toBeGreaterThan(0);
  });

  it('that is killed is not asked again where a job may be done once only', async () => {
    const pool = oddPool({ tries: 1 });
    await expect(pool.call('die', remembered())).rejects.toMatchObject({ reason: 'thread-died' });
  });

  it('that is stuck is ended at the limit, and the next job has a fresh one', async () => {
    expect(WORKER_POOL.longestMs).toBe(30_000);
    const longestMs = 300;
    const pool = oddPool({ longestMs });
    const before = await pool.run(null);
    const start = performance.now();
    await expect(pool.call('hang', null)).rejects.toMatchObject({ reason: 'too-long' });
    console.info(
      `a stuck job, limit ${longestMs} ms: ended after ${Math.round(performance.now() - start)} ms`,
    );
    expect(await pool.run(null)).not.toBe(before);
  });

  it('has its clock run from the beginning of the job, not while the job waits', async () => {
    const pool = oddPool({ longestMs: 400 });
    await pool.run(null);
    const stuck = pool.call('hang', null);
    const waiting = [pool.run(null), pool.run(null)];
    await expect(stuck).rejects.toMatchObject({ reason: 'too-long' });
    expect((await Promise.all(waiting)).length).toBe(2);
  });

  it('whose memory runs out says so, and the program goes on', async () => {
    const pool = oddPool({ longestMs: null, heapMb: 64 });
    await expect(pool.call('fillHeap', null)).rejects.toMatchObject({ reason: 'out-of-memory' });
    expect(await pool.run(null)).toBeGreaterThan(0);
  });

  it('is renewed after so many jobs', async () => {
    const pool = oddPool({ mostJobs: 3 });
    const ids: number[] = [];
    for (let job = 0; job < 7; job += 1) ids.push(await pool.run(null));
    expect(new Set(ids.slice(0, 3)).size).toBe(1);
    expect(new Set(ids.slice(3, 6)).size).toBe(1);
    expect(new Set(ids).size).toBe(3);
    console.info(`7 jobs, 3 a thread: ${new Set(ids).size} threads`);
  });

  it('is renewed when it holds too much', async () => {
    const pool = oddPool({ mostHeldMb: 200 });
    const before = await pool.call('hold', 1);
    expect(await pool.call('hold', 1)).toBe(before);
    expect(await pool.call('hold', 250)).toBe(before);
    expect(await pool.run(null)).not.toBe(before);
  });

  it('hands on the fault of a job as it is, and is not used again', async () => {
    const pool = oddPool();
    const before = await pool.run(null);
    await expect(pool.call('refuse', null)).rejects.toThrow('Expected a leaf but received a petal');
    expect(await pool.run(null)).not.toBe(before);
  });

  it('that breaks down after its answer ends neither the program nor the next job', async () => {
    const pool = oddPool();
    for (let job = 0; job < 3; job += 1) {
      expect(await pool.call('breakLater', null)).toBeGreaterThan(0);
      await new Promise((resolve) => setTimeout(resolve, 60));
    }
    expect(await pool.run(null)).toBeGreaterThan(0);
  });

  it('serves jobs that came all at once, and ends those that wait when it is closed', async () => {
    const pool = oddPool({ threads: 2, mostJobs: 4 });
    expect((await Promise.all(Array.from({ length: 20 }, () => pool.run(null)))).length).toBe(20);
    const stuck = [pool.call('hang', null), pool.call('hang', null), pool.run(null)];
    const ended = Promise.allSettled(stuck);
    await pool.close();
    const reasons = (await ended).map((one) => one.status === 'rejected' && one.reason.reason);
    expect(reasons).toEqual(['closed', 'closed', 'closed']);
  });
});

describe('a photo whose measuring thread', () => {
  async function measuredOn(job: string, task: unknown, options: Partial<WorkerPoolOptions> = {}) {
    const pool = oddPool(options);
    const bench = await openBench({
      measure: async (photo): Promise<MeasuredFile> => {
        await pool.call(job, task);
        return sampleMeasurement(photo);
      },
    });
    const plant = await bench.addPlant();
    const entry = onlyEntry(await bench.upload(plant.id, [{ name: 'a.jpg', bytes: await plantJpeg() }]));
    if (entry.outcome !== 'kept') throw new Error(entry.detail);
    await bench.services.queue.whenIdle();
    return (await bench.send('GET', `/api/views/${entry.view.id}`)).body;
  }

  it('dies once is measured all the same', async () => {
    expect(await measuredOn('die', remembered())).toMatchObject({ state: 'measured', failure: null });
  });

  it('dies twice could not be measured, and says why', async () => {
    expect(await measuredOn('die', null)).toMatchObject({
      state: 'failed',
      failure:
        'This photo could not be measured: the measuring ended part-way, twice. The photo is safe; measure it again, or take another one.',
    });
  });

  it('hangs could not be measured, and says why', async () => {
    expect(await measuredOn('hang', null, { longestMs: 200 })).toMatchObject({
      state: 'failed',
      failure:
        'This photo could not be measured: it was not done after 30 seconds and was stopped. The photo is safe; measure it again when the machine has less to do.',
    });
  });
});
