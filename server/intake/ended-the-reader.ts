import { JobStopped } from '../measuring/job-stopped.ts';
import { type RefusedPhoto, refusal } from './refused-photo.ts';

/** A photo that ends each thread that reads it is refused: sent again, it would do so for ever. Other faults go on. */
export function refuseIfItEndedTheReader(fault: unknown): RefusedPhoto {
  if (fault instanceof JobStopped && fault.reason !== 'closed') return refusal('ended-the-reader');
  throw fault;
}
