import { createRequire } from 'node:module';
import { availableParallelism, loadavg } from 'node:os';
import { pathToFileURL } from 'node:url';
import { Piscina } from 'piscina';
import { JobStopped, type StopReason } from './job-stopped.ts';
import type { JobBegun, WatchedJob, WatchedOutcome } from './watched-job.ts';

/** Threads that run the jobs of one file; they start at once and stay, so that what they load is loaded once. */
export interface WorkerPool<Task, Result> {
  /** Runs the job called `default`. */
  run(task: Task): Promise<Result>;
  /** Runs another of the file's jobs. */
  call(name: string, task: unknown): Promise<unknown>;
  close(): Promise<void>;
}

export interface WorkerPoolOptions {
  readonly threads: number;
  /** A job that runs longer is ended with its thread, later where other work crowds the processor; `null` for jobs that may run as long as they like. */
  readonly longestMs: number | null;
  /** How often a job is tried whose thread dies. */
  readonly tries: number;
  /** After so many jobs a thread gives way to a fresh one. */
  readonly mostJobs: number;
  /** A thread that holds more after a job gives way to a fresh one. */
  readonly mostHeldMb: number;
  /** A job whose JavaScript needs more ends with its thread. */
  readonly heapMb: number;
}

/**
 * A 12-megapixel photo takes 2 s on a desk's processor and 12 on a slow one that is busy, so 30 s is a job that
 * hangs. A thread holds some 300 MB; loading it anew costs as much as two photos.
 */
export const WORKER_POOL: Omit<WorkerPoolOptions, 'threads'> = {
  longestMs: 30_000,
  tries: 2,
  mostJobs: 200,
  mostHeldMb: 700,
  heapMb: 1024,
};

/** What a fresh thread may be spared. */
const DIED: ReadonlySet<StopReason> = new Set(['thread-died', 'out-of-memory']);

// The worker files are TypeScript, whatever has loaded this one: the server, the command line or the tests.
const TYPESCRIPT_LOADER = pathToFileURL(createRequire(import.meta.url).resolve('tsx')).href;

/**
 * Opens a pool over the jobs of the file at `workerUrl` (`watchedJobs`). A job rejects with its own fault, or with `JobStopped`
 * when its thread died each time or it ran too long.
 */
export function openWorkerPool<Task, Result>(
  workerUrl: URL,
  options: Partial<WorkerPoolOptions> & Pick<WorkerPoolOptions, 'threads'>,
): WorkerPool<Task, Result> {
  const { threads, longestMs, tries, mostJobs, mostHeldMb, heapMb } = { ...WORKER_POOL, ...options };
  const pool = new Piscina<WatchedJob, WatchedOutcome>({
    filename: workerUrl.href,
    execArgv: ['--import', TYPESCRIPT_LOADER],
    resourceLimits: { maxOldGenerationSizeMb: heapMb },
    minThreads: threads,
    maxThreads: threads,
    concurrentTasksPerWorker: 1,
  });
  // A thread that dies between two jobs is replaced; unheard, the event would end the program.
  pool.on('error', () => {});
  const clocks = new Map<number, () => void>();
  pool.on('message', (message: JobBegun) => clocks.get(message.begunJob)?.());
  const places = freePlaces(threads);
  const jobsDone = new Map<number, number>();
  let lastId = 0;
  let closed = false;

  async function once(name: string, task: unknown): Promise<WatchedOutcome> {
    if (closed) throw new JobStopped('closed', { cause: null });
    const id = ++lastId;
    const stop = new AbortController();
    let clock: NodeJS.Timeout | undefined;
    clocks.set(id, () => {
      if (longestMs !== null) clock = setTimeout(() => stop.abort(), longestMs * crowding());
    });
    try {
      return await pool.run({ id, name, task }, { signal: stop.signal });
    } catch (fault) {
      throw new JobStopped(reasonFor(fault, stop.signal), { cause: fault });
    } finally {
      clearTimeout(clock);
      clocks.delete(id);
    }
  }

  function reasonFor(fault: unknown, { aborted }: AbortSignal): StopReason {
    if (closed) return 'closed';
    if (aborted) return 'too-long';
    const { code } = fault as NodeJS.ErrnoException;
    return code === 'ERR_WORKER_OUT_OF_MEMORY' ? 'out-of-memory' : 'thread-died';
  }

  async function tried(name: string, task: unknown, left: number): Promise<WatchedOutcome> {
    try {
      return await once(name, task);
    } catch (fault) {
      const died = fault instanceof JobStopped && DIED.has(fault.reason);
      if (!died || left <= 1) throw fault;
      return tried(name, task, left - 1);
    }
  }

  /**
   * Ends a thread that has done or holds enough, and one whose job threw: the pixel library may be left in disorder.
   * Another starts in its place.
   */
  async function renewIfDue({ threadId, heldMb, outcome }: WatchedOutcome): Promise<void> {
    const done = (jobsDone.get(threadId) ?? 0) + 1;
    jobsDone.set(threadId, done);
    if (outcome.ok && done < mostJobs && heldMb <= mostHeldMb) return;
    jobsDone.delete(threadId);
    await pool.threads.find((thread) => thread.threadId === threadId)?.terminate();
  }

  async function call(name: string, task: unknown): Promise<unknown> {
    await places.take();
    let watched: WatchedOutcome;
    try {
      watched = await tried(name, task, tries);
      // Before the place is free, so that no job is sent to a thread that ends.
      await renewIfDue(watched);
    } finally {
      places.free();
    }
    if (watched.outcome.ok) return watched.outcome.result;
    throw watched.outcome.fault;
  }

  return {
    run: (task) => call('default', task) as Promise<Result>,
    call,
    close: () => {
      closed = true;
      return pool.destroy();
    },
  };
}

/** How many times longer work takes because others want the processor too: 1 or more; 1 where the system does not tell its load. */
function crowding(): number {
  const [load = 0] = loadavg();
  return Math.max(1, load / availableParallelism());
}

/** As many places as threads: who finds none waits its turn. */
function freePlaces(count: number) {
  let free = count;
  const waiting: (() => void)[] = [];
  return {
    take(): Promise<void> | void {
      if (free > 0) {
        free -= 1;
        return;
      }
      return new Promise((resolve) => waiting.push(resolve));
    },
    free(): void {
      const next = waiting.shift();
      if (next) next();
      else free += 1;
    },
  };
}
