import { createRequire } from 'node:module';
import { pathToFileURL } from 'node:url';
import { Piscina } from 'piscina';

/** Threads that run the functions of one file; they start at once and stay, so that what they load is loaded once. */
export interface WorkerPool<Task, Result> {
  /** Runs the file's default export. */
  run(task: Task): Promise<Result>;
  /** Runs another of its exports. */
  call(name: string, task: unknown): Promise<unknown>;
  close(): Promise<void>;
}

// The worker files are TypeScript, whatever has loaded this one: the server, the command line or the tests.
const TYPESCRIPT_LOADER = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

/** Opens a pool over the exports of the file at `workerUrl`. */
export function openWorkerPool<Task, Result>(workerUrl: URL, threads: number): WorkerPool<Task, Result> {
  const pool = new Piscina<Task, Result>({
    filename: workerUrl.href,
    execArgv: ['--import', TYPESCRIPT_LOADER],
    minThreads: threads,
    maxThreads: threads,
    concurrentTasksPerWorker: 1,
  });
  return {
    run: (task) => pool.run(task),
    call: (name, task) => pool.run(task as Task, { name }),
    close: () => pool.destroy(),
  };
}
