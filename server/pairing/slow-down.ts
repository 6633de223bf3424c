/** How patience with wrong tries runs out. */
export interface Patience {
  /** Wrong tries that cost nothing. */
  readonly free: number;
  /** The wait after the first one too many; each further one doubles it. */
  readonly firstWaitMs: number;
  readonly longestWaitMs: number;
  /** Without a wrong try for so long, all is forgotten. */
  readonly forgetAfterMs: number;
}

/** Counts wrong tries and says how long the next one has to wait. */
export interface SlowDown {
  waitMs(key: string, nowMs: number): number;
  noteWrong(key: string, nowMs: number): void;
  forget(key: string): void;
}

/** More keys than a home has devices; past that the oldest go, and the count over all still holds. */
const MOST_KEYS = 500;

export function createSlowDown(patience: Patience): SlowDown {
  const wrong = new Map<string, { count: number; lastMs: number }>();

  function current(key: string, nowMs: number) {
    const found = wrong.get(key);
    return found && nowMs - found.lastMs < patience.forgetAfterMs ? found : null;
  }

  return {
    waitMs(key, nowMs) {
      const found = current(key, nowMs);
      if (found === null || found.count <= patience.free) return 0;
      const wait = Math.min(
        patience.longestWaitMs,
        patience.firstWaitMs * 2 ** (found.count - patience.free - 1),
      );
      return Math.max(0, found.lastMs + wait - nowMs);
    },
    noteWrong(key, nowMs) {
      const count = (current(key, nowMs)?.count ?? 0) + 1;
      // Put in anew, so that the map runs from the oldest to the newest.
      wrong.delete(key);
      wrong.set(key, { count, lastMs: nowMs });
      const oldest = wrong.keys().next().value;
      if (wrong.size > MOST_KEYS && oldest !== undefined) wrong.delete(oldest);
    },
    forget: (key) => void wrong.delete(key),
  };
}
