// Runs in a worker thread of its own, so that a stroke never waits behind photos being measured.
import {
  type GatheredFile,
  gatherFile,
  type MeasuredFile,
  type MeasureTask,
  measureGatheredFile,
} from './measure-file.ts';
import { warmUp } from './warm-up.ts';
import { watchedJobs } from './watched-job.ts';

/** A photo to cut anew with its strokes, or only to be made ready. */
export interface CorrectionTask {
  readonly job: 'cut' | 'warm';
  /** The view and everything beside the strokes that its cut depends on. */
  readonly evidenceKey: string;
  readonly photo: MeasureTask;
}

/** Photos kept ready: some 60 MB each. */
const MOST_KEPT = 3;

/** Photos on which every voice was heard, the one used last at the end. */
const kept = new Map<string, Promise<GatheredFile>>();

export async function correctInWorker(task: CorrectionTask): Promise<MeasuredFile | null> {
  const file = await readied(task);
  return task.job === 'warm' ? null : measureGatheredFile(file, task.photo);
}

function readied({ evidenceKey, photo }: CorrectionTask): Promise<GatheredFile> {
  const file = kept.get(evidenceKey) ?? gatherFile(photo);
  kept.delete(evidenceKey);
  kept.set(evidenceKey, file);
  file.catch(() => kept.delete(evidenceKey));
  const oldest = kept.keys().next();
  if (kept.size > MOST_KEPT && !oldest.done) kept.delete(oldest.value);
  return file;
}

export default watchedJobs({ default: correctInWorker }, warmUp);
