import type { StopDepth } from '../cut/cut.ts';
import type { PlantKind } from '../plant.ts';
import type { Figure } from './figure.ts';

/** Place of a stop in a season. */
export const STOP_ROLES = ['first', 'second', 'last'] as const;
export type StopRole = (typeof STOP_ROLES)[number];

/** When growers stop, counted back from the show, and what the figure rests on. */
export interface UsualWindow {
  readonly depth: StopDepth;
  /** Days before the show: first and last day of the window. */
  readonly fromDaysBefore: number;
  readonly toDaysBefore: number;
  /** A sentence about where the figure comes from and how far to trust it. */
  readonly standing: string;
}

/** What is held of the time from a last stop of one depth to full bloom before the grower has records. */
export interface StopToBloom {
  readonly depth: StopDepth;
  /** `null` where nothing is printed or practised. */
  readonly usual: UsualWindow | null;
  /** From the stop to the first day of full bloom; `null` when not known. */
  readonly meanDays: Figure | null;
  /** Standard deviation of one plant in one season of a grower of whom nothing is known yet. */
  readonly spreadDays: Figure;
}

/** A stop of the season, and how long until the next one. */
export interface ChainStop {
  readonly role: StopRole;
  readonly depth: StopDepth;
  /** `null` for the last. */
  readonly daysToNext: Figure | null;
}

export interface KindDefaults {
  /** Deep first. */
  readonly stops: readonly StopToBloom[];
  /** Earliest first; ends with the last stop. */
  readonly chain: readonly ChainStop[];
  /** Days from the first to the last day of full bloom, both counted. */
  readonly bloomLastsDays: Figure;
}

/** How the records are weighed and the day is chosen, for all kinds alike. */
export interface WeighingDefaults {
  /** Share of plants that may be late, above 0 and at most 0.5. */
  readonly acceptedLate: Figure;
  /** Days of a window, its last day included. */
  readonly windowDays: Figure;
  /** So many records of the grower's own the default mean counts as. */
  readonly countsAs: Figure;
  /** Degrees of freedom that the default spread counts as, a whole number above 2. */
  readonly spreadFreedom: Figure;
  /** What a record of another variety of the kind counts as, beside 1 for the variety's own. */
  readonly otherVarietyCountsAs: Figure;
  /** All records of other varieties together count as no more than this many. */
  readonly otherVarietiesMost: Figure;
}

/** The table of defaults: a value that the grower's own figures are laid over. */
export interface StopDefaults {
  readonly kinds: Readonly<Record<PlantKind, KindDefaults>>;
  readonly weighing: WeighingDefaults;
}

/** The windows that are known for a kind, deep stop first; none for a kind of which nothing is known. */
export function usualWindows(kind: PlantKind, defaults: StopDefaults): UsualWindow[] {
  return defaults.kinds[kind].stops.flatMap(({ usual }) => (usual === null ? [] : [usual]));
}
