import type { RemeasuringAnswer } from '../schemas/remeasuring.ts';
import type { Database } from '../store/database.ts';
import { type DueView, dueViewById } from '../store/due-view.ts';
import {
  countOutdated,
  isOutdated,
  keepRemeasuringRun,
  type OutdatedView,
  outdatedViews,
  type RemeasuringRun,
  remeasuringRun,
} from '../store/remeasuring.ts';
import { noteBegun, noteEnded, viewsLeftAside } from '../store/under-way.ts';

/**
 * Measures photos anew whose numbers come from an older method: one at a time, behind everything else. A photo keeps its
 * old numbers until its new ones take their place in one step, so that a stop or a fault leaves each photo old or new. The
 * grower can stop it and go on later; a start of the program goes on where it was.
 */
export interface Remeasuring {
  answer(): RemeasuringAnswer;
  /** Goes on, also with what broke down before; wake the queue afterwards. */
  begin(): void;
  /** Takes no further photo; the one under way is finished. */
  stop(): void;
  /** The next photo, for the queue; `null` when nothing is to be done. */
  take(): DueView | null;
  /** What became of the photo that was taken. */
  settle(viewId: string, brokeDown: boolean): void;
  /** Hears of every step until the returned function is called. */
  listen(listener: (answer: RemeasuringAnswer) => void): () => void;
}

/** From so many photos on their pace foretells the rest. */
const PACE_PHOTOS = 3;
const NO_RUN: RemeasuringRun = { total: 0, stopped: false, sittingId: null };

export function createRemeasuring(db: Database, methodVersion: string): Remeasuring {
  let waiting: OutdatedView[] = [];
  let underWay = false;
  let pace = { photos: 0, ms: 0 };
  let takenAtMs = 0;
  const brokeDown = new Set(viewsLeftAside(db));
  const listeners = new Set<(answer: RemeasuringAnswer) => void>();

  const kept = () => remeasuringRun(db, methodVersion) ?? NO_RUN;

  function keep(change: Partial<RemeasuringRun>): void {
    const before = kept();
    const now = { ...before, ...change };
    if (now.total === before.total && now.stopped === before.stopped && now.sittingId === before.sittingId)
      return;
    keepRemeasuringRun(db, methodVersion, now);
  }

  function tell(): void {
    if (listeners.size === 0) return;
    const now = answer();
    for (const listener of listeners) listener(now);
  }

  /** Looks for what is outdated; a run that a stop of the program cut off keeps its total. */
  function lookForWork(): void {
    waiting = outdatedViews(db, methodVersion).filter(({ viewId }) => !brokeDown.has(viewId));
    if (waiting.length === 0) keep({ total: 0, sittingId: null });
    else keep({ total: Math.max(kept().total, waiting.length) });
  }

  function answer(): RemeasuringAnswer {
    const { total, stopped } = kept();
    const outdated = countOutdated(db, methodVersion);
    const left = Math.max(0, outdated - brokeDown.size);
    const whole = Math.max(total, left);
    return {
      methodVersion,
      state: left === 0 ? 'idle' : stopped ? 'stopped' : 'running',
      outdated,
      total: left === 0 ? 0 : whole,
      done: left === 0 ? 0 : whole - left,
      brokeDown: brokeDown.size,
      minutesLeft:
        stopped || left === 0 || pace.photos < PACE_PHOTOS ? null : (left * pace.ms) / pace.photos / 60_000,
    };
  }

  return {
    answer,
    begin() {
      for (const viewId of brokeDown) noteEnded(db, viewId);
      brokeDown.clear();
      keep({ stopped: false });
      lookForWork();
      tell();
    },
    stop() {
      keep(underWay ? { stopped: true } : { stopped: true, sittingId: null });
      tell();
    },
    take() {
      if (underWay || kept().stopped) return null;
      for (let looked = false; ; ) {
        const next = waiting.shift();
        if (next === undefined) {
          if (looked) return null;
          lookForWork();
          looked = true;
          continue;
        }
        // It may have been measured, removed or asked for since the list was made.
        if (!isOutdated(db, next.viewId, methodVersion)) continue;
        const due = dueViewById(db, next.viewId);
        if (due === null) continue;
        underWay = true;
        noteBegun(db, next.viewId);
        takenAtMs = performance.now();
        keep({ sittingId: next.sittingId });
        return { ...due, quiet: true, lookUp: true };
      }
    },
    settle(viewId, broke) {
      // What is written comes first: where the store cannot be written all of it is done over.
      noteEnded(db, viewId);
      if (broke) brokeDown.add(viewId);
      if (kept().stopped) keep({ sittingId: null });
      else if (waiting.length === 0) lookForWork();
      underWay = false;
      pace = { photos: pace.photos + 1, ms: pace.ms + performance.now() - takenAtMs };
      tell();
    },
    listen(listener) {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
