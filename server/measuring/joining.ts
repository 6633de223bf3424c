import type { Logger } from 'pino';
import type { TurnedReport } from '../../core/turned/measure-turned.ts';
import type { Database } from '../store/database.ts';
import { type DueSitting, keepJoining, keepJoiningFailure, takeDueSitting } from '../store/joinings.ts';
import type { LateWrites } from '../store/late-writes.ts';
import { type ViewToJoin, viewsToJoin } from '../store/views-to-join.ts';
import type { SittingTask } from './join-sitting.ts';
import type { ProgressBoard } from './progress.ts';
import { unreadableReport } from './unreadable-report.ts';

/** Joins sittings whose views are all measured, one at a time. The store is the queue here too. */
export interface Joining {
  /** Looks for sittings to join. */
  wake(): void;
  isIdle(): boolean;
  close(): void;
}

export interface JoiningParts {
  readonly db: Database;
  readonly progress: ProgressBoard;
  readonly log: Logger;
  readonly lateWrites: LateWrites;
  readonly join: (task: SittingTask) => Promise<TurnedReport>;
  /** Called when a sitting was joined. */
  readonly whenDone: () => void;
}

export function createJoining({ db, progress, log, lateWrites, join, whenDone }: JoiningParts): Joining {
  let underWay = false;
  let closed = false;

  async function joinDue(due: DueSitting): Promise<void> {
    const { plantId, sittingId } = due;
    progress.tell({ plantId, sittingId, turnedState: 'measuring' });
    const breakDown = (fault: unknown) => {
      log.error({ err: fault, sittingId }, 'joining a sitting broke down');
      lateWrites.write(
        () => {
          keepJoiningFailure(db, due);
          progress.tell({ plantId, sittingId, turnedState: 'failed' });
        },
        (unkept) => log.error({ err: unkept, sittingId }, 'that joining broke down could not be kept'),
      );
    };
    try {
      const views = viewsToJoin(db, sittingId);
      const report = await join(sittingTask(views));
      if (closed) return;
      const viewIds = views.map(({ viewId }) => viewId);
      lateWrites.write(() => {
        const kept = keepJoining(db, due, report, viewIds);
        progress.tell({ plantId, sittingId, turnedState: kept ? 'ready' : 'waiting' });
      }, breakDown);
    } catch (fault) {
      if (!closed) breakDown(fault);
    }
  }

  return {
    wake() {
      if (underWay || closed) return;
      const due = takeDueSitting(db);
      if (due === null) return;
      underWay = true;
      joinDue(due).finally(() => {
        underWay = false;
        if (!closed) whenDone();
      });
    },
    isIdle: () => !underWay,
    close: () => {
      closed = true;
    },
  };
}

/** The task that joins a sitting. The light is left out: which way to turn depends on how the pot stands when it is asked. */
export function sittingTask(views: readonly ViewToJoin[]): SittingTask {
  return {
    views: views.map(({ viewId, turnDeg, report, maskPng, lens }) => ({
      report: { ...(report ?? unreadableReport(viewId, null, '')), turnDeg },
      maskPng,
      lens: lens ?? { focalLengthPx: null, cameraDistanceMm: null },
    })),
    cameraHeightMm: views[0]?.cameraHeightMm ?? null,
    light: null,
  };
}
