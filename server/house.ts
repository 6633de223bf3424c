import { availableParallelism } from 'node:os';
import type { Logger } from 'pino';
import { METHOD_VERSION } from '../core/method-version.ts';
import type { TurnedReport } from '../core/turned/measure-turned.ts';
import type { ReceivedPhoto } from './intake/receive-photo.ts';
import type { RefusedPhoto } from './intake/refused-photo.ts';
import { localDay } from './local-day.ts';
import type { CorrectionTask } from './measuring/correction-worker.ts';
import { createCorrections } from './measuring/corrections.ts';
import type { Lesson } from './measuring/learn-from-files.ts';
import type { MeasuredFile, MeasureTask } from './measuring/measure-file.ts';
import { createMeasuringQueue } from './measuring/measuring-queue.ts';
import { createProgressBoard } from './measuring/progress.ts';
import { openWorkerPool } from './measuring/worker-pool.ts';
import type { Services } from './services.ts';
import { openDataHome } from './store/data-home.ts';
import { openDatabase } from './store/database.ts';
import { queueLeftAndOutdated } from './store/due-view.ts';
import { forgetUnfinishedJoinings } from './store/joinings.ts';
import { dropUnusedColours } from './store/lessons.ts';
import type { EmptyCheck } from './store/stand-versions.ts';

/** The services over one data home, and the way to close them. */
export interface House {
  readonly services: Services;
  close(): Promise<void>;
}

/** Threads that measure: each holds a decoder and the pixel library, some 300 MB with a large photo. */
export const MEASURING_THREADS = Math.max(1, Math.min(4, availableParallelism()));

/** Opens the store and the worker threads, and goes on with what a stop has left waiting. */
export function openHouse(
  homePath: string,
  log: Logger,
  { network }: { readonly network: boolean } = { network: true },
): House {
  const home = openDataHome(homePath);
  const db = openDatabase(home.root);
  queueLeftAndOutdated(db, METHOD_VERSION);
  dropUnusedColours(db);
  forgetUnfinishedJoinings(db);
  // Reading uploads has its own thread, so that it never waits behind photos being measured.
  const intake = openWorkerPool<string, ReceivedPhoto | RefusedPhoto>(
    new URL('intake/worker.ts', import.meta.url),
    1,
  );
  const measuring = openWorkerPool<MeasureTask, MeasuredFile>(
    new URL('measuring/worker.ts', import.meta.url),
    MEASURING_THREADS,
  );
  const progress = createProgressBoard();
  const parts = {
    db,
    home,
    network,
    progress,
    log,
    learn: (lessons: readonly Lesson[]) => measuring.call('learn', lessons) as Promise<Uint8Array | null>,
  };
  const corrections = createCorrections({
    ...parts,
    openPool: () =>
      openWorkerPool<CorrectionTask, MeasuredFile | null>(
        new URL('measuring/correction-worker.ts', import.meta.url),
        1,
      ),
  });
  const queue = createMeasuringQueue({
    ...parts,
    measure: measuring.run,
    join: (task) => measuring.call('join', task) as Promise<TurnedReport>,
    atOnce: MEASURING_THREADS,
    holdBack: corrections.isInUse,
  });
  queue.wake();
  return {
    services: {
      db,
      home,
      queue,
      corrections,
      progress,
      log,
      receive: intake.run,
      hullOfSitting: (task) => measuring.call('hull', task) as ReturnType<Services['hullOfSitting']>,
      stemsOfSitting: (task) => measuring.call('stems', task) as ReturnType<Services['stemsOfSitting']>,
      foretellCuts: (task) => measuring.call('foretell', task) as ReturnType<Services['foretellCuts']>,
      checkEmptyPhoto: (task) => measuring.call('checkEmpty', task) as Promise<EmptyCheck>,
      today: () => localDay(new Date()),
    },
    async close() {
      queue.close();
      await Promise.all([intake.close(), measuring.close(), corrections.close()]);
      db.close();
    },
  };
}
