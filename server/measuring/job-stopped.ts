/** Why a job came to no end. */
export type StopReason = 'thread-died' | 'out-of-memory' | 'too-long' | 'closed';

/** A job whose thread died, or that was ended; a job's own faults come as they are. */
export class JobStopped extends Error {
  readonly reason: StopReason;

  constructor(reason: StopReason, options: { readonly cause: unknown }) {
    super(reason, options);
    this.name = 'JobStopped';
    this.reason = reason;
  }
}
