import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Piscina } from 'piscina';

/** Threads that run one function; they start at once and stay, so that what they load is loaded once. */
export interface WorkerPool<Task, Result> {
  run(task: Task): Promise<Result>;
  close(): Promise<void>;
}

// The worker files are TypeScript, whatever has loaded this one: the server, the command line or the tests.
const TYPESCRIPT_LOADER = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

/** Opens a pool over the default export of the file at `workerUrl`. */
export function openWorkerPool<Task, Result>(workerUrl: URL, threads: number): WorkerPool<Task, Result> {
  const pool = new Piscina<Task, Result>({
    filename: workerUrl.href,
    execArgv: ['--import', TYPESCRIPT_LOADER],
    minThreads: threads,
    maxThreads: threads,
    concurrentTasksPerWorker: 1,
  });
  return { run: (task) => pool.run(task), close: () => pool.destroy() };
}
