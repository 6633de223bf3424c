import type { Logger } from 'pino';
import type { Day } from '../core/day/day.ts';
import type { KeepingDesk } from './backup/keeping-desk.ts';
import type { ArrivedFile, ReceivedPhoto } from './intake/receive-photo.ts';
import type { RefusedPhoto } from './intake/refused-photo.ts';
import type { EmptyPhotoTask } from './measuring/check-empty-photo.ts';
import type { Corrections } from './measuring/corrections.ts';
import type { foretellCuts } from './measuring/foretell-cuts.ts';
import type { hullOfSitting } from './measuring/join-sitting.ts';
import type { MeasuringQueue } from './measuring/measuring-queue.ts';
import type { stemsOfSitting } from './measuring/place-stems.ts';
import type { ProgressBoard } from './measuring/progress.ts';
import type { Remeasuring } from './measuring/remeasuring.ts';
import type { BloomFitting } from './season/bloom-fitting.ts';
import type { DataHome } from './store/data-home.ts';
import type { Database } from './store/database.ts';
import type { EmptyCheck } from './store/stand-versions.ts';

/** What the routes work with. */
export interface Services {
  readonly db: Database;
  readonly home: DataHome;
  readonly queue: MeasuringQueue;
  readonly remeasuring: Remeasuring;
  readonly corrections: Corrections;
  readonly progress: ProgressBoard;
  readonly log: Logger;
  /** Reads an uploaded file, in a worker thread. */
  readonly receive: (file: ArrivedFile) => Promise<ReceivedPhoto | RefusedPhoto>;
  /** Looks at an empty photo, in a worker thread. */
  readonly checkEmptyPhoto: (task: EmptyPhotoTask) => Promise<EmptyCheck>;
  /** Makes the solid of a sitting's hull, in a worker thread. */
  readonly hullOfSitting: typeof hullOfSitting;
  /** Places the long stems of a turned sitting, in a worker thread. */
  readonly stemsOfSitting: typeof stemsOfSitting;
  /** What the views of a cut list would be after the chosen cuts, in a worker thread. */
  readonly foretellCuts: typeof foretellCuts;
  readonly blooms: BloomFitting;
  /** Backups, checks and restoring. */
  readonly keeping: KeepingDesk;
  /** The grower's calendar day. */
  readonly today: () => Day;
}
