import type { Logger } from 'pino';
import { METHOD_VERSION } from '../../core/method-version.ts';
import { type DueView, dueViewById } from '../store/due-view.ts';
import type { KnownSources } from '../store/known-sources.ts';
import type { LateWrites } from '../store/late-writes.ts';
import { keepFailure, keepMeasurement } from '../store/measurements.ts';
import type { CorrectionTask } from './correction-worker.ts';
import { failureWords } from './failure-words.ts';
import type { MeasuredFile } from './measure-file.ts';
import type { ProgressBoard } from './progress.ts';
import { type TaskParts, taskForView } from './task-for-view.ts';
import type { WorkerPool } from './worker-pool.ts';

/** Cuts views anew while the grower draws on them. */
export interface Corrections {
  /** Makes a view's photo ready, so that the first stroke is answered as fast as the later ones. */
  warm(viewId: string): Promise<void>;
  /** Measures a view with the strokes in the store; resolves once its newest strokes were measured. */
  recut(viewId: string): Promise<void>;
  /** Whether the grower is at it: a photo was cut anew or made ready just now. */
  isInUse(): boolean;
  close(): Promise<void>;
}

export interface CorrectionParts extends TaskParts {
  readonly progress: ProgressBoard;
  readonly log: Logger;
  readonly lateWrites: LateWrites;
  /** Opens the worker thread; it is opened when it is needed and closed when it has been idle. */
  readonly openPool: () => Pick<WorkerPool<CorrectionTask, MeasuredFile | null>, 'run' | 'close'>;
  readonly idleMs?: number;
}

/** The thread holds some 300 MB: long enough for a tea, not for ever. */
const IDLE_MS = 5 * 60_000;
/** A grower at work draws again within this time. */
const BETWEEN_STROKES_MS = 15_000;

export function createCorrections(parts: CorrectionParts): Corrections {
  const { db, log, lateWrites, progress } = parts;
  const worker = lazyWorker(parts);
  let turn: Promise<void> = Promise.resolve();
  const newest = new Map<string, Promise<void>>();

  async function cutNow(viewId: string): Promise<void> {
    const due = dueViewById(db, viewId);
    // Measured by an earlier turn, which read the store after these strokes came; or waiting for other reasons.
    if (due === null || due.state !== 'measuring') return;
    try {
      const { task, known } = await taskForView(parts, due);
      const measured = await worker.run({ job: 'cut', evidenceKey: evidenceKey(due, known), photo: task });
      if (measured === null) throw new TypeError('Expected a measured photo but received none');
      if (keepMeasurement(db, due, measured, known)) tell(due, 'measured');
    } catch (fault) {
      log.error({ err: fault, viewId }, 'measuring with strokes broke down');
      lateWrites.write(
        () => {
          if (keepFailure(db, due, failureWords(fault))) tell(due, 'failed');
        },
        (unkept) => log.error({ err: unkept, viewId }, 'that it broke down could not be kept'),
      );
      throw fault;
    }
  }

  function tell({ plantId, viewId }: DueView, state: 'measured' | 'failed'): void {
    progress.tell({ plantId, viewId, state });
  }

  return {
    async warm(viewId) {
      const due = dueViewById(db, viewId);
      if (due === null) throw new RangeError(`Expected a view of the store but received ${viewId}`);
      const { task, known } = await taskForView(parts, due);
      await worker.run({ job: 'warm', evidenceKey: evidenceKey(due, known), photo: task });
    },
    async recut(viewId) {
      // One after the other: a later list of strokes never loses against an earlier one.
      const mine = turn.then(() => cutNow(viewId));
      turn = mine.catch(() => {});
      newest.set(viewId, mine);
      await mine;
      for (let seen = mine, last = newest.get(viewId); last && last !== seen; last = newest.get(viewId)) {
        seen = last;
        await last;
      }
      if (newest.get(viewId) === mine) newest.delete(viewId);
    },
    isInUse: worker.isInUse,
    close: () => worker.close(),
  };
}

/** Everything beside the strokes that a view's cut depends on. */
function evidenceKey(due: DueView, known: KnownSources): string {
  const { viewId, sha256, emptySha256, rimMm, turnDeg } = due;
  const stand = [due.standVersionId, due.referenceSha256, due.sheet, due.cameraDistanceMm];
  return JSON.stringify([METHOD_VERSION, viewId, sha256, emptySha256, stand, rimMm, turnDeg, known]);
}

/** Opens the thread with the first task, and closes it when none came for a while. */
function lazyWorker({ openPool, idleMs = IDLE_MS }: CorrectionParts) {
  let pool: ReturnType<CorrectionParts['openPool']> | null = null;
  let underWay = 0;
  let idle: NodeJS.Timeout | undefined;
  let lastUsedMs = Number.NEGATIVE_INFINITY;

  async function rest(): Promise<void> {
    clearTimeout(idle);
    const closing = pool;
    pool = null;
    await closing?.close();
  }

  return {
    isInUse: () => underWay > 0 || performance.now() - lastUsedMs < BETWEEN_STROKES_MS,
    close: rest,
    async run(task: CorrectionTask): Promise<MeasuredFile | null> {
      clearTimeout(idle);
      underWay += 1;
      try {
        pool ??= openPool();
        return await pool.run(task);
      } finally {
        underWay -= 1;
        lastUsedMs = performance.now();
        if (underWay === 0 && pool !== null) {
          idle = setTimeout(() => void rest(), idleMs);
          idle.unref();
        }
      }
    },
  };
}
