import type { Logger } from 'pino';
import type { Day } from '../../core/day/day.ts';
import { benchPage } from '../bench/pages.ts';
import type { Database } from '../store/database.ts';
import type { BloomFitting } from './bloom-fitting.ts';

const LOOK_EVERY_MS = 60_000;

/**
 * Reckons the bench now and when the day has turned, so that whoever looks first need not wait for every plant; what is reckoned of plants
 * is remembered, and blooms whose fit is not kept are begun.
 *
 * @returns ends it
 */
export function reckonAhead({
  db,
  today,
  blooms,
  log,
}: {
  readonly db: Database;
  readonly today: () => Day;
  readonly blooms: BloomFitting;
  readonly log: Logger;
}): () => void {
  let reckoned: Day | null = null;
  let isOver = false;
  function look(): void {
    if (reckoned === today()) return;
    reckoned = today();
    benchPage(db, blooms.facts).catch((fault) => {
      if (!isOver) log.error({ err: fault }, 'the bench could not be reckoned ahead');
    });
  }
  look();
  const clock = setInterval(look, LOOK_EVERY_MS).unref();
  return () => {
    isOver = true;
    clearInterval(clock);
  };
}
