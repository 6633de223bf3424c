import { availableParallelism } from 'node:os';
import type { Logger } from 'pino';
import type { Day } from '../core/day/day.ts';
import { METHOD_VERSION } from '../core/method-version.ts';
import type { TurnedReport } from '../core/turned/measure-turned.ts';
import { createKeepingDesk } from './backup/keeping-desk.ts';
import { swapInRestored } from './backup/restore.ts';
import type { KeepingJob, KeepingResult } from './backup/worker.ts';
import { whenNoneIsKept } from './bench/keep-photo.ts';
import type { BloomFit } from './condition/bloom-fits.ts';
import { refuseIfItEndedTheReader } from './intake/ended-the-reader.ts';
import type { ArrivedFile, ReceivedPhoto } from './intake/receive-photo.ts';
import type { RefusedPhoto } from './intake/refused-photo.ts';
import { localDay } from './local-day.ts';
import type { CorrectionTask } from './measuring/correction-worker.ts';
import { createCorrections } from './measuring/corrections.ts';
import { freshPhotos } from './measuring/fresh-photos.ts';
import { goOnWithWhatWasLeft } from './measuring/go-on.ts';
import type { Lesson } from './measuring/learn-from-files.ts';
import type { MeasuredFile, MeasureTask } from './measuring/measure-file.ts';
import { createMeasuringQueue } from './measuring/measuring-queue.ts';
import { openedWhenAsked } from './measuring/opened-when-asked.ts';
import { createProgressBoard } from './measuring/progress.ts';
import { createRemeasuring } from './measuring/remeasuring.ts';
import { openWorkerPool } from './measuring/worker-pool.ts';
import { createBloomFitting } from './season/bloom-fitting.ts';
import { reckonAhead } from './season/reckon-ahead.ts';
import type { Services } from './services.ts';
import { type DataHome, openDataHome } from './store/data-home.ts';
import { type Database, openDatabase } from './store/database.ts';
import { type HomeLock, lockHome } from './store/home-lock.ts';
import { createLateWrites } from './store/late-writes.ts';
import { originalPath } from './store/photo-files.ts';
import { settlePhotosByAndBy } from './store/settle-photos.ts';
import type { EmptyCheck } from './store/stand-versions.ts';
import { noteStopped } from './store/under-way.ts';

/** The services over one data home, and the way to close them. */
export interface House {
  readonly services: Services;
  close(): Promise<void>;
}

/** Threads that measure: each holds a decoder and the pixel library, some 300 MB with a large photo. */
export const MEASURING_THREADS = Math.max(1, Math.min(4, availableParallelism()));

/** By then the first page has been answered. */
const THREADS_AFTER_MS = 1_500;
/** So many missing originals are named in the log; the page of keeping names all. */
const MISSING_NAMED = 20;

export interface HouseOptions {
  /** Whether photos are measured with the trained network; they are when left out. */
  readonly network?: boolean;
  /** The grower's calendar day; that of this machine when left out. */
  readonly today?: () => Day;
  /** Called when a backup lies ready to take the store's place: the house is to be closed and opened again. */
  readonly onRestored?: () => void;
}

/** Opens the store and the worker threads, and goes on with what a stop has left waiting. */
export function openHouse(
  homePath: string,
  log: Logger,
  { network = true, today = () => localDay(new Date()), onRestored = () => {} }: HouseOptions = {},
): House {
  const home = openDataHome(homePath);
  const lock = lockHome(home.root);
  const db = openStore(home, lock);
  let isClosing = false;
  const found = settlePhotosByAndBy(db, home, () => isClosing);
  found.then(
    ({ missing }) => {
      if (missing.length === 0) return;
      log.error(
        { count: missing.length, missing: missing.slice(0, MISSING_NAMED) },
        'originals of the store are not there',
      );
    },
    (fault) => log.error({ err: fault }, 'the folder of originals could not be looked through'),
  );
  const lateWrites = createLateWrites(log);
  lateWrites.write(
    () => goOnWithWhatWasLeft(db),
    (fault) => log.error({ err: fault }, 'what a stop has left could not be looked through'),
  );
  // Reading uploads has its own thread, so that it never waits behind photos being measured.
  const intake = openedWhenAsked(() =>
    openWorkerPool<ArrivedFile, ReceivedPhoto | RefusedPhoto>(new URL('intake/worker.ts', import.meta.url), {
      threads: 1,
    }),
  );
  const measuring = openedWhenAsked(() =>
    openWorkerPool<MeasureTask, MeasuredFile>(new URL('measuring/worker.ts', import.meta.url), {
      threads: MEASURING_THREADS,
    }),
  );
  const fresh = freshPhotos();
  const progress = createProgressBoard();
  const parts = {
    db,
    home,
    network,
    progress,
    log,
    lateWrites,
    learn: (lessons: readonly Lesson[]) => measuring.call('learn', lessons) as Promise<Uint8Array | null>,
  };
  const corrections = createCorrections({
    ...parts,
    openPool: () =>
      openWorkerPool<CorrectionTask, MeasuredFile | null>(
        new URL('measuring/correction-worker.ts', import.meta.url),
        { threads: 1 },
      ),
  });
  const remeasuring = createRemeasuring(db, METHOD_VERSION);
  const queue = createMeasuringQueue({
    ...parts,
    remeasuring,
    measure: (task) => measuring.run({ ...task, unpacked: fresh.take(task.path) }),
    join: (task) => measuring.call('join', task) as Promise<TurnedReport>,
    atOnce: MEASURING_THREADS,
    holdBack: corrections.isInUse,
  });
  queue.wake();
  const fitting = openedWhenAsked(() =>
    openWorkerPool<readonly BloomFit[], readonly unknown[]>(
      new URL('season/fit-worker.ts', import.meta.url),
      {
        threads: 1,
      },
    ),
  );
  const blooms = createBloomFitting({
    db,
    today,
    log,
    reckon: fitting.run,
    tell: (plantId) => progress.tell({ plantId, bloom: 'reckoned' }),
  });
  let stopAhead = () => {};
  const gettingReady = setTimeout(() => {
    intake.ready();
    measuring.ready();
    stopAhead = reckonAhead({ db, today, blooms, log });
  }, THREADS_AFTER_MS).unref();
  const keeping = createKeepingDesk({
    db,
    home,
    log,
    found,
    onRestored,
    openPool: () =>
      // A backup takes as long as the disk takes, and is begun anew by the grower only.
      openWorkerPool<KeepingJob, KeepingResult>(new URL('backup/worker.ts', import.meta.url), {
        threads: 1,
        longestMs: null,
        tries: 1,
      }),
  });
  keeping.watchTheClock();
  return {
    services: {
      db,
      home,
      queue,
      remeasuring,
      corrections,
      progress,
      log,
      keeping,
      blooms,
      async receive(file) {
        const photo = await intake.run(file).catch(refuseIfItEndedTheReader);
        if (photo.ok) fresh.hold(originalPath(home, photo.sha256, photo.format), photo.checked);
        return photo;
      },
      hullOfSitting: (task) => measuring.call('hull', task) as ReturnType<Services['hullOfSitting']>,
      stemsOfSitting: (task) => measuring.call('stems', task) as ReturnType<Services['stemsOfSitting']>,
      foretellCuts: (task) => measuring.call('foretell', task) as ReturnType<Services['foretellCuts']>,
      checkEmptyPhoto: (task) => measuring.call('checkEmpty', task) as Promise<EmptyCheck>,
      today,
    },
    async close() {
      isClosing = true;
      clearTimeout(gettingReady);
      stopAhead();
      queue.close();
      lateWrites.close();
      blooms.close();
      await Promise.all([
        intake.close(),
        measuring.close(),
        corrections.close(),
        fitting.close(),
        keeping.close(),
      ]);
      await whenNoneIsKept();
      noteStopped(db);
      db.close();
      lock.release();
    },
  };
}

/** Opens the database, after a restored store has taken its place. A fault lets go of the home. */
function openStore(home: DataHome, lock: HomeLock): Database {
  try {
    if (swapInRestored(home.root)) openDataHome(home.root);
    return openDatabase(home.root);
  } catch (fault) {
    lock.release();
    throw fault;
  }
}
