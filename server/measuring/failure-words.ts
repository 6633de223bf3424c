import { JobStopped } from './job-stopped.ts';
import { WORKER_POOL } from './worker-pool.ts';

const LONGEST_S = (WORKER_POOL.longestMs ?? 0) / 1000;

/** Why a photo is left aside at a start. */
export const ENDED_EACH_TIME =
  'Rondure ended three times while it measured this photo, so the photo was left aside. It is safe; measure it again, or take another one.';

/** Why a photo could not be measured, for the grower; what a fault of ours was stands in the log. */
export function failureWords(fault: unknown): string {
  if (!(fault instanceof JobStopped)) {
    return 'The program broke down while measuring this photo. The photo is safe; measure it again.';
  }
  switch (fault.reason) {
    case 'too-long':
      return `This photo could not be measured: it was not done after ${LONGEST_S} seconds and was stopped. The photo is safe; measure it again when the machine has less to do.`;
    case 'out-of-memory':
      return 'This photo could not be measured: the memory ran out, twice. The photo is safe; close other programs on Rondure’s machine and measure it again.';
    case 'thread-died':
      return 'This photo could not be measured: the measuring ended part-way, twice. The photo is safe; measure it again, or take another one.';
    case 'closed':
      return 'Rondure was stopped while measuring this photo. The photo is safe; measure it again.';
  }
}
