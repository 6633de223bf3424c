// Runs in every worker thread, around the functions that it is for.
import { parentPort, threadId } from 'node:worker_threads';

/** A job as it goes to a thread: which function to call, and what with. */
export interface WatchedJob {
  readonly id: number;
  readonly name: string;
  readonly task: unknown;
}

/** Told when a job begins, so that its clock does not run while it waits or its thread starts. */
export interface JobBegun {
  readonly begunJob: number;
}

/** How a job came out, and what its thread holds after it. */
export interface WatchedOutcome {
  readonly threadId: number;
  /** JavaScript's heap, and what lies beside it: buffers and the pixel library's memory. */
  readonly heldMb: number;
  readonly outcome:
    | { readonly ok: true; readonly result: unknown }
    | { readonly ok: false; readonly fault: unknown };
}

/**
 * The default export of a worker file: runs its functions by name. A fault of a job is an outcome, so whatever a pool
 * sees rejected befell the thread.
 *
 * @param ready awaited before a job's clock starts; begun at once
 */
export function watchedJobs(
  // biome-ignore lint/suspicious/noExplicitAny: each job has a task of its own; the pool's types say which
  jobs: Readonly<Record<string, (task: any) => unknown>>,
  ready: () => Promise<void> = async () => {},
): (job: WatchedJob) => Promise<WatchedOutcome> {
  ready().catch(() => {}); // Told by the first job, which waits for it.
  async function outcomeOf({ id, name, task }: WatchedJob): Promise<WatchedOutcome['outcome']> {
    try {
      await ready();
      parentPort?.postMessage({ begunJob: id } satisfies JobBegun);
      const job = jobs[name];
      if (job === undefined) throw new TypeError(`Expected a job called ${name} but found none`);
      return { ok: true, result: await job(task) };
    } catch (fault) {
      return { ok: false, fault };
    }
  }
  return async (job) => {
    const outcome = await outcomeOf(job);
    const { heapTotal, external } = process.memoryUsage();
    return { threadId, heldMb: (heapTotal + external) / 1e6, outcome };
  };
}
