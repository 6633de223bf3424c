import type { Logger } from 'pino';
import type { DataHome } from '../store/data-home.ts';
import type { Database } from '../store/database.ts';
import { type DueView, keepFailure, keepMeasurement, takeDueView } from '../store/measurements.ts';
import { originalPath } from '../store/photo-files.ts';
import type { MeasuredFile, MeasureTask } from './measure-file.ts';
import type { ProgressBoard } from './progress.ts';

/** Measures the views that wait in the store, a few at once. The store is the queue: a stop loses nothing. */
export interface MeasuringQueue {
  /** Looks for waiting views; call it after one was added or queued anew. */
  wake(): void;
  /** Resolves when nothing waits and nothing is under way. */
  whenIdle(): Promise<void>;
  /** Takes no further view. */
  close(): void;
}

export interface QueueParts {
  readonly db: Database;
  readonly home: DataHome;
  readonly progress: ProgressBoard;
  readonly log: Logger;
  readonly measure: (task: MeasureTask) => Promise<MeasuredFile>;
  /** Views under way at one time. */
  readonly atOnce: number;
}

const FAILURE = 'The program broke down while measuring this photo. The photo is safe; measure it again.';

export function createMeasuringQueue(parts: QueueParts): MeasuringQueue {
  const { db, progress, log } = parts;
  let underWay = 0;
  let closed = false;
  let idleWaiters: (() => void)[] = [];

  async function measureDue(due: DueView): Promise<void> {
    const { plantId, viewId } = due;
    progress.tell({ plantId, viewId, state: 'measuring' });
    try {
      const measured = await parts.measure(taskFor(parts.home, due));
      if (closed) return;
      const state = keepMeasurement(db, due, measured) ? 'measured' : 'received';
      progress.tell({ plantId, viewId, state });
    } catch (fault) {
      if (closed) return;
      log.error({ err: fault, viewId }, 'measuring broke down');
      const state = keepFailure(db, due, FAILURE) ? 'failed' : 'received';
      progress.tell({ plantId, viewId, state });
    }
  }

  function wake(): void {
    while (!closed && underWay < parts.atOnce) {
      const due = takeDueView(db);
      if (due === null) break;
      underWay += 1;
      measureDue(due).finally(() => {
        underWay -= 1;
        wake();
      });
    }
    if (underWay === 0) {
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
    },
  };
}

function taskFor(home: DataHome, due: DueView): MeasureTask {
  return {
    path: originalPath(home, due.sha256, due.format),
    photoName: due.fileName,
    rimMm: due.rimMm,
    emptyPath:
      due.emptySha256 && due.emptyFormat ? originalPath(home, due.emptySha256, due.emptyFormat) : null,
    turnDeg: due.turnDeg,
    maskAs: 'clear',
  };
}
