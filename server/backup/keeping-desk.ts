import { stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Logger } from 'pino';
import type { WorkerPool } from '../measuring/worker-pool.ts';
import type { Backup, Keeping } from '../schemas/keeping.ts';
import { backupPlan, keepCheck, lastCheck } from '../store/backup-plan.ts';
import type { DataHome } from '../store/data-home.ts';
import type { Database } from '../store/database.ts';
import { allPlants } from '../store/plants.ts';
import type { FoundAtStart } from '../store/settle-photos.ts';
import { diskWords } from './disk.ts';
import { replacedStores } from './restore.ts';
import { backupsIn } from './rotation.ts';
import type { KeepingJob, KeepingResult } from './worker.ts';

/** How often it is asked whether a backup is due; the first time after one such wait, so that a start is not held up. */
const LOOK_EVERY_MS = 10 * 60_000;
const DAY_MS = 24 * 3_600_000;

/** Where backups are made, checked and restored: one piece of work at a time, off the request path. */
export interface KeepingDesk {
  answer(): Promise<Keeping>;
  /** Each begins work and says whether it could: it cannot while other work is under way. */
  beginBackup(): boolean;
  beginCheck(of: string): boolean;
  beginRestore(name: string): boolean;
  /** Resolves when no work is under way. */
  whenIdle(): Promise<void>;
  /** Makes a backup by itself whenever one is due. */
  watchTheClock(): void;
  close(): Promise<void>;
}

export interface KeepingParts {
  readonly db: Database;
  readonly home: DataHome;
  readonly log: Logger;
  readonly found: FoundAtStart | Promise<FoundAtStart>;
  readonly openPool: () => Pick<WorkerPool<KeepingJob, KeepingResult>, 'run' | 'close'>;
  readonly onRestored: () => void;
  readonly nowMs?: () => number;
}

export function createKeepingDesk(parts: KeepingParts): KeepingDesk {
  const { db, home, log, found, nowMs = Date.now } = parts;
  let underWay: Keeping['underWay'] = null;
  let failure: string | null = null;
  let working: Promise<void> = Promise.resolve();
  let pool: ReturnType<KeepingParts['openPool']> | null = null;
  let clock: NodeJS.Timeout | null = null;
  let closed = false;

  const folder = () => backupPlan(db).folder ?? home.backups;

  function begin(job: KeepingJob): boolean {
    if (underWay !== null || closed) return false;
    underWay = { what: job.what, since: new Date(nowMs()).toISOString() };
    if (job.what !== 'check') failure = null;
    working = work(job).finally(() => {
      underWay = null;
    });
    return true;
  }

  async function work(job: KeepingJob): Promise<void> {
    try {
      pool = parts.openPool();
      const result = await pool.run(job);
      if (closed) return;
      if (result.what === 'check') keepCheck(db, result.check);
      else if (!result.outcome.ok) failure = result.outcome.words;
      else if (result.what === 'restore') parts.onRestored();
    } catch (fault) {
      if (closed) return;
      log.error({ err: fault }, `a ${job.what} broke down`);
      failure = diskWords(fault, folder());
    } finally {
      await pool?.close();
      pool = null;
    }
  }

  function beginBackup(): boolean {
    return begin({ what: 'backup', task: { home, folder: folder(), keepCount: backupPlan(db).keepCount } });
  }

  /** When the next backup is due; `null` while there is nothing to back up. */
  function nextAtMs(backups: readonly Backup[]): number | null {
    if (allPlants(db).length === 0) return null;
    const last = backups[0];
    return last === undefined ? nowMs() : Date.parse(last.madeAt) + backupPlan(db).everyDays * DAY_MS;
  }

  async function backupIfDue(): Promise<void> {
    const next = nextAtMs(await backupsIn(folder()).catch(() => []));
    if (next !== null && next <= nowMs()) beginBackup();
  }

  return {
    async answer() {
      const plan = backupPlan(db);
      const { backups, folderFault } = await readable(folder(), plan.folder !== null);
      const next = nextAtMs(backups);
      const { setAside, missing } = await found;
      return {
        home: home.root,
        folder: folder(),
        plan,
        backups,
        folderFault,
        nextAt: next === null ? null : new Date(next).toISOString(),
        underWay,
        failure,
        check: lastCheck(db),
        setAside: [...setAside],
        missing: [...missing],
        replaced: await replacedStores(home.root),
      };
    },
    beginBackup,
    beginCheck: (of) => begin({ what: 'check', home, folder: folder(), of }),
    beginRestore: (name) =>
      begin({ what: 'restore', task: { backup: join(folder(), name), homeRoot: home.root } }),
    whenIdle: () => working,
    watchTheClock() {
      clock ??= setInterval(() => void backupIfDue(), LOOK_EVERY_MS).unref();
    },
    async close() {
      closed = true;
      if (clock !== null) clearInterval(clock);
      await pool?.close();
    },
  };
}

/** The backups of a folder. One that the grower named must be there: a stick that is not plugged in holds no backups. */
async function readable(
  folder: string,
  isNamed: boolean,
): Promise<{ backups: Backup[]; folderFault: string | null }> {
  try {
    if (isNamed) await stat(folder);
    return { backups: await backupsIn(folder), folderFault: null };
  } catch (fault) {
    return { backups: [], folderFault: diskWords(fault, folder) };
  }
}
