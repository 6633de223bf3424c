// Runs in a worker thread: a fit takes a tenth of a second, which would hold up the server.
import { type BloomFit, reckonFit } from '../condition/bloom-fits.ts';
import { watchedJobs } from '../measuring/watched-job.ts';

/** The answers, in the same order. */
export function reckonFits(fits: readonly BloomFit[]): unknown[] {
  return fits.map(({ name, question }) => reckonFit(name, question));
}

export default watchedJobs({ default: reckonFits });
