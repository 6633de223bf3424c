import { METHOD_VERSION } from '../../core/method-version.ts';
import type { Database } from '../store/database.ts';
import { queueLeftAndFailed } from '../store/due-view.ts';
import { forgetUnfinishedJoinings } from '../store/joinings.ts';
import { dropUnusedColours } from '../store/lessons.ts';
import { leaveSitting } from '../store/remeasuring.ts';
import { ENDED_EACH_TIME } from './failure-words.ts';

/** At start: what a stop has left half-done waits again. */
export function goOnWithWhatWasLeft(db: Database): void {
  queueLeftAndFailed(db, { methodVersion: METHOD_VERSION, leftAside: ENDED_EACH_TIME });
  dropUnusedColours(db);
  forgetUnfinishedJoinings(db);
  leaveSitting(db);
}
