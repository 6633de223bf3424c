import type { WorkerPool } from './worker-pool.ts';

/** A pool whose threads start when they are first asked for, or told to get ready. */
export interface LatePool<Task, Result> extends WorkerPool<Task, Result> {
  /** Starts the threads, so that the first job need not wait for what they load. */
  ready(): void;
}

/** Threads load for a second each: a start that has no work for them first answers whoever looks at the bench. */
export function openedWhenAsked<Task, Result>(open: () => WorkerPool<Task, Result>): LatePool<Task, Result> {
  let pool: WorkerPool<Task, Result> | null = null;
  let isClosed = false;
  const opened = () => {
    pool ??= open();
    return pool;
  };
  return {
    run: (task) => opened().run(task),
    call: (name, task) => opened().call(name, task),
    ready: () => {
      if (!isClosed) opened();
    },
    close: async () => {
      isClosed = true;
      await pool?.close();
    },
  };
}
