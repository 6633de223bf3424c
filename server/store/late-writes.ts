import type { Logger } from 'pino';

/** Writes that no request waits for: what the store cannot take now, on a full or failing disk, it takes when it can. */
export interface LateWrites {
  /**
   * Writes at once, or again and again until it could be, in the order given. What fails for another reason than the
   * store is told to `otherwise` and not tried again.
   */
  write(step: () => void, otherwise: (fault: unknown) => void): void;
  /** Leaves what is not written for the next start. */
  close(): void;
}

const AGAIN_MS = 5_000;

export function createLateWrites(log: Pick<Logger, 'error'>, againMs = AGAIN_MS): LateWrites {
  const waiting: { step: () => void; otherwise: (fault: unknown) => void }[] = [];
  let clock: NodeJS.Timeout | undefined;
  let isWriting = false;

  function writeWaiting(): void {
    // A step may ask for another one, which then has its turn below.
    if (isWriting) return;
    isWriting = true;
    try {
      for (let next = waiting[0]; next; next = waiting[0]) {
        try {
          next.step();
        } catch (fault) {
          if (isOfTheStore(fault)) throw fault;
          waiting.shift();
          next.otherwise(fault);
          continue;
        }
        waiting.shift();
      }
    } catch (fault) {
      log.error({ err: fault, waiting: waiting.length }, 'the store could not be written and is tried again');
      clearTimeout(clock);
      clock = setTimeout(writeWaiting, againMs).unref();
    } finally {
      isWriting = false;
    }
  }

  return {
    write(step, otherwise) {
      waiting.push({ step, otherwise });
      writeWaiting();
    },
    close() {
      clearTimeout(clock);
      waiting.length = 0;
    },
  };
}

function isOfTheStore(fault: unknown): boolean {
  return String((fault as { code?: unknown } | null)?.code).startsWith('SQLITE_');
}
