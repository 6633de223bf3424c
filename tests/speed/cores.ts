// How much faster eight views are measured on both cores than on one: `node --import tsx tests/speed/cores.ts [THREADS]`.
// A measurement, not a test: what is slow depends on the machine. Asked for: 1.8 times with two.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, cpus, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MeasuredFile, MeasureTask } from '../../server/measuring/measure-file.ts';
import { openWorkerPool } from '../../server/measuring/worker-pool.ts';
import { cameraPhoto, SAMPLES } from './camera-photos.ts';
import { plainTask } from './plain-task.ts';

const VIEWS = 8;
const RUNS = 5;
const MEGAPIXELS = 12;
const [threads = 2] = process.argv.slice(2).map(Number);

const folder = mkdtempSync(join(tmpdir(), 'rondure-cores-'));
const tasks: MeasureTask[] = [];
for (let view = 0; view < VIEWS; view++) {
  const path = join(folder, `${view}.jpg`);
  writeFileSync(path, await cameraPhoto(join(SAMPLES, 'window-regal/2026-11-15.jpg'), MEGAPIXELS, view));
  tasks.push(plainTask(path));
}

/** Milliseconds for all views, the middle of the runs; the threads are warm. */
async function allViewsMs(withThreads: number): Promise<number> {
  const worker = new URL('../../server/measuring/worker.ts', import.meta.url);
  const pool = openWorkerPool<MeasureTask, MeasuredFile>(worker, { threads: withThreads });
  const times: number[] = [];
  try {
    await Promise.all(tasks.slice(0, 2 * withThreads).map((task) => pool.run(task)));
    for (let run = 0; run < RUNS; run++) {
      const begun = performance.now();
      const measured = await Promise.all(tasks.map((task) => pool.run(task)));
      times.push(performance.now() - begun);
      const failed = measured.find(({ report }) => report.status !== 'measured');
      if (failed) throw new Error(`not measured: ${failed.report.hint}`);
    }
  } finally {
    await pool.close();
  }
  return times.sort((a, b) => a - b)[RUNS >> 1] as number;
}

try {
  const one = await allViewsMs(1);
  const all = await allViewsMs(threads);
  console.log(
    `${VIEWS} views of ${MEGAPIXELS} MP, ${cpus()[0]?.model}, ${availableParallelism()} cores: ${(one / 1000).toFixed(1)} s on one thread, ${(all / 1000).toFixed(1)} s on ${threads}: ${(one / all).toFixed(2)} times as fast.`,
  );
} finally {
  rmSync(folder, { recursive: true, force: true });
}
