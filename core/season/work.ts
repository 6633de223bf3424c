import type { BloomAgainstShow } from '../bloom/bloom-against-show.ts';
import type { Day } from '../day/day.ts';
import type { TurnRhythm } from '../light/next-turn.ts';
import type { PlantKind } from '../plant.ts';
import type { LogEntry } from './log-entry.ts';
import type { Show } from './show.ts';
import type { StopPlan } from './stop-plan.ts';
import type { WrittenStop } from './written-stops.ts';

/** What there is to do for a plant on a day. */
export const WORK_KINDS = [
  'stop',
  'keep-dry',
  'water-little',
  'keep-airy',
  'look-for-breaks',
  'look-over',
  'look-again',
  'take-off-bloom',
  'turn',
  'photograph',
  'check-entry',
  'feed',
  'pot-on',
  'own',
] as const;
export type WorkKind = (typeof WORK_KINDS)[number];

/** Kinds that come round by themselves, week after week. */
export const WEEKLY_WORK: readonly WorkKind[] = ['look-over', 'turn', 'photograph'];

/** One piece of work with its days. */
export interface Work {
  /** The same for the same work however often it is reckoned: plant, kind and what it hangs on. */
  readonly key: string;
  readonly plantId: string;
  readonly kind: WorkKind;
  readonly day: Day;
  /** Last day on which it is in time. */
  readonly dueBy: Day;
  /** Last day on which it is of use; after it the work lapses by itself. `null`: it waits. */
  readonly until: Day | null;
  readonly what: string;
  readonly why: string;
  /** What it rests on. */
  readonly standing: string;
  /** Safety words; `null` where nothing can hurt. */
  readonly caution: string | null;
  /** Done as a record tells; `null` while none does. */
  readonly doneOn: Day | null;
}

/** Work of the grower's own: feeding, potting on, anything. */
export interface OwnWork {
  readonly id: string;
  readonly kind: 'feed' | 'pot-on' | 'own';
  readonly day: Day;
  /** `null`: once. */
  readonly everyDays: number | null;
  /** Last day on which it comes round or waits; `null`: none. */
  readonly untilDay: Day | null;
  /** What to do, in the grower's words. */
  readonly text: string;
}

/** How often weekly work comes round, days; `null`: no reminder. */
export interface WorkRhythm {
  readonly photographDays: number | null;
  readonly lookOverDays: number | null;
}

/** Once a week: our own choice; traps for whitefly are read once or twice a week (UC IPM Floriculture, 2009). */
export const USUAL_WORK_RHYTHM: WorkRhythm = { photographDays: 7, lookOverDays: 7 };

/** All that a plant's work follows from. */
export interface PlantSeason {
  readonly plantId: string;
  readonly kind: PlantKind;
  /** Weekly work is counted from here while nothing is recorded. */
  readonly fromDay: Day;
  /** The show that the stops are planned for; `null` while there is none. */
  readonly show: Show | null;
  readonly plan: StopPlan | null;
  readonly stops: readonly WrittenStop[];
  readonly log: readonly LogEntry[];
  /** Days on which it was photographed and turned, in any order. */
  readonly sittingDays: readonly Day[];
  readonly turnDays: readonly Day[];
  readonly turnRhythm: TurnRhythm;
  readonly rhythm: WorkRhythm;
  readonly ownWork: readonly OwnWork[];
  /** The bloom as its photos tell it against the show; left out or `null` before colour is seen, and without a show to come. */
  readonly bloom?: SeenBloom | null;
}

/** A bloom that photos show. */
export interface SeenBloom {
  /** The newest reading. */
  readonly day: Day;
  /** Whether its days are told closely enough to go by. */
  readonly isTold: boolean;
  /** When it came into full bloom; `null` while it has not, and where that is not told closely enough. */
  readonly fullOn: Day | null;
  readonly againstShow: BloomAgainstShow;
}

/** First and last day asked for, both counted. */
export interface DayRange {
  readonly from: Day;
  readonly to: Day;
}

/** Builds a key that stays the same while the work does. */
export function workKey(plantId: string, kind: WorkKind, hangsOn: string): string {
  return `${plantId}:${kind}:${hangsOn}`;
}
