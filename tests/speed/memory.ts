// Whether memory grows over many analyses: `nice -n 10 node --import tsx tests/speed/memory.ts 500`, with
// `--never-renewed` in one thread from the first to the last,
// `--no-network` without the trained network. A measurement, not a test.
import { mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { MeasuredFile, MeasureTask } from '../../server/measuring/measure-file.ts';
import { openWorkerPool, WORKER_POOL } from '../../server/measuring/worker-pool.ts';
import { plantJpeg } from '../server/fixtures/photos.ts';
import { plainTask } from './plain-task.ts';

const EVERY = 50;
const analyses = Number(process.argv[2] ?? 500);
// The network takes most of the time; the memory of the pixel library is used without it too.
const network = !process.argv.includes('--no-network');
if (!network) process.env.RONDURE_NETWORK = 'off';
const neverRenewed = process.argv.includes('--never-renewed');

const folder = await mkdtemp(join(tmpdir(), 'rondure-memory-'));
const pool = openWorkerPool<MeasureTask, MeasuredFile>(
  new URL('../../server/measuring/worker.ts', import.meta.url),
  {
    threads: 1,
    ...(neverRenewed ? { mostJobs: Number.POSITIVE_INFINITY, mostHeldMb: Number.POSITIVE_INFINITY } : {}),
  },
);
try {
  const path = join(folder, 'plant.jpg');
  await writeFile(path, await plantJpeg(1, { width: 280, height: 210 }));
  const renewed = neverRenewed
    ? 'never renewed'
    : `renewed after ${WORKER_POOL.mostJobs} or ${WORKER_POOL.mostHeldMb} MB`;
  console.log(
    `${analyses} analyses of 280 × 210 px in one thread, ${renewed}, ${network ? 'with' : 'without'} the network`,
  );
  for (let done = 1; done <= analyses; done += 1) {
    const { report } = await pool.run(plainTask(path, { network }));
    if (report.status !== 'measured') throw new Error(report.hint ?? report.status);
    if (done % EVERY === 0 || done === 1) {
      console.log(`after ${String(done).padStart(4)}: RSS ${Math.round(process.memoryUsage.rss() / 1e6)} MB`);
    }
  }
} finally {
  await pool.close();
  await rm(folder, { recursive: true, force: true });
}
