// Runs in a worker thread: a backup and a check read all there is, which would hold up the server.
import { watchedJobs } from '../measuring/watched-job.ts';
import type { StoreCheck } from '../schemas/keeping.ts';
import type { DataHome } from '../store/data-home.ts';
import { checkBackup, checkStore } from './check.ts';
import { type BackupOutcome, type BackupTask, makeBackup } from './make-backup.ts';
import { layOutBackup, type RestoreOutcome, type RestoreTask } from './restore.ts';

export type KeepingJob =
  | { readonly what: 'backup'; readonly task: BackupTask }
  | { readonly what: 'check'; readonly home: DataHome; readonly folder: string; readonly of: string }
  | { readonly what: 'restore'; readonly task: RestoreTask };

export type KeepingResult =
  | { readonly what: 'backup'; readonly outcome: BackupOutcome }
  | { readonly what: 'check'; readonly check: StoreCheck }
  | { readonly what: 'restore'; readonly outcome: RestoreOutcome };

export async function keepInWorker(job: KeepingJob): Promise<KeepingResult> {
  switch (job.what) {
    case 'backup':
      return { what: 'backup', outcome: await makeBackup(job.task) };
    case 'check':
      return {
        what: 'check',
        check: await (job.of === 'store' ? checkStore(job.home) : checkBackup(job.folder, job.of)),
      };
    case 'restore':
      return { what: 'restore', outcome: await layOutBackup(job.task) };
  }
}

export default watchedJobs({ default: keepInWorker });
