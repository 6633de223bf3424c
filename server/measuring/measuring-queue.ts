import type { Logger } from 'pino';
import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import { type DueView, takeDueView } from '../store/due-view.ts';
import type { LateWrites } from '../store/late-writes.ts';
import { keepFailure, keepMeasurement } from '../store/measurements.ts';
import { failureWords } from './failure-words.ts';
import type { SittingTask } from './join-sitting.ts';
import { createJoining } from './joining.ts';
import type { MeasuredFile, MeasureTask } from './measure-file.ts';
import type { ProgressBoard } from './progress.ts';
import type { Remeasuring } from './remeasuring.ts';
import { type TaskParts, taskForView } from './task-for-view.ts';

/**
 * Measures the views that wait in the store, a few at once, and joins the sittings whose views are measured. The store is
 * the queue: a stop loses nothing.
 */
export interface MeasuringQueue {
  /** Looks for waiting views and sittings; call it after one was added, queued anew or changed. */
  wake(): void;
  /** Resolves when nothing waits and nothing is under way. */
  whenIdle(): Promise<void>;
  /** Takes no further view. */
  close(): void;
}

export interface QueueParts extends TaskParts {
  readonly progress: ProgressBoard;
  readonly log: Logger;
  readonly lateWrites: LateWrites;
  readonly measure: (task: MeasureTask) => Promise<MeasuredFile>;
  readonly join: (task: SittingTask) => Promise<TurnedReport>;
  /** What is to be measured anew when nothing else waits. */
  readonly remeasuring: Pick<Remeasuring, 'take' | 'settle'>;
  /** Views under way at one time. */
  readonly atOnce: number;
  /** Whether the grower waits for another thread: then one view fewer is under way. */
  readonly holdBack: () => boolean;
}

export function createMeasuringQueue(parts: QueueParts): MeasuringQueue {
  const { db, progress, log, lateWrites, remeasuring } = parts;
  let underWay = 0;
  // One at a time, so that bringing photos up to date leaves room for what the grower waits for.
  let quietUnderWay = 0;
  let closed = false;
  let isAsked = false;
  let idleWaiters: (() => void)[] = [];
  const joining = createJoining({ ...parts, whenDone: wake });

  async function measureDue(due: DueView): Promise<void> {
    const { plantId, viewId } = due;
    progress.tell({ plantId, viewId, state: 'measuring' });
    const breakDown = (fault: unknown) => {
      log.error({ err: fault, viewId }, 'measuring broke down');
      lateWrites.write(() => {
        const state = keepFailure(db, due, failureWords(fault)) ? 'failed' : 'received';
        progress.tell({ plantId, viewId, state });
      }, tellUnkept);
    };
    try {
      const { task, known } = await taskForView(parts, due);
      const measured = await parts.measure(task);
      if (closed) return;
      lateWrites.write(() => {
        const state = keepMeasurement(db, due, measured, known) ? 'measured' : 'received';
        progress.tell({ plantId, viewId, state });
      }, breakDown);
    } catch (fault) {
      if (!closed) breakDown(fault);
    }
  }

  /** A photo with numbers of an older method: they stand until the new ones are there, also when that breaks down. */
  async function measureAnew(due: DueView): Promise<void> {
    const { plantId, viewId } = due;
    const breakDown = (fault: unknown) => {
      log.error({ err: fault, viewId }, 'measuring anew broke down');
      lateWrites.write(() => remeasuring.settle(viewId, true), tellUnkept);
    };
    try {
      const { task, known } = await taskForView(parts, due);
      const measured = await parts.measure(task);
      if (closed) return;
      lateWrites.write(() => {
        if (keepMeasurement(db, due, measured, known)) progress.tell({ plantId, viewId, state: 'measured' });
        remeasuring.settle(viewId, false);
      }, breakDown);
    } catch (fault) {
      if (!closed) breakDown(fault);
    }
  }

  function tellUnkept(fault: unknown): void {
    log.error({ err: fault }, 'what came of measuring could not be kept');
  }

  function wake(): void {
    if (isAsked || closed) return;
    isAsked = true;
    // Taking a photo is written too: on a full disk it waits, and whoever woke the queue has kept what they had to keep.
    lateWrites.write(
      () => {
        takeWhatFits();
        isAsked = false;
      },
      (fault) => {
        isAsked = false;
        tellUnkept(fault);
      },
    );
  }

  function takeWhatFits(): void {
    while (!closed && underWay < Math.max(1, parts.atOnce - (parts.holdBack() ? 1 : 0))) {
      const asked = takeDueView(db, { quietToo: quietUnderWay === 0 });
      const due = asked ?? (quietUnderWay === 0 ? remeasuring.take() : null);
      if (due === null) break;
      underWay += 1;
      if (due.quiet) quietUnderWay += 1;
      (asked === null ? measureAnew(due) : measureDue(due)).finally(() => {
        underWay -= 1;
        if (due.quiet) quietUnderWay -= 1;
        wake();
      });
    }
    joining.wake();
    if (underWay === 0 && joining.isIdle()) {
      for (const resolve of idleWaiters) resolve();
      idleWaiters = [];
    }
  }

  return {
    wake,
    whenIdle: () =>
      new Promise((resolve) => {
        idleWaiters.push(resolve);
        wake();
      }),
    close: () => {
      closed = true;
      joining.close();
    },
  };
}
