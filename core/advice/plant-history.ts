import { type Day, daysBetween } from '../day/day.ts';
import type { LeafSeen } from '../foliage/leaf-change.ts';
import type { LightLedger } from '../light/light-ledger.ts';
import type { TurnRhythm } from '../light/next-turn.ts';
import type { PlantKind } from '../plant.ts';
import type { PhotoReport } from '../report.ts';
import type { SeasonKnowledge } from '../season/days-to-bloom.ts';
import type { TurnedReport } from '../turned/measure-turned.ts';
import type { LightPlace } from '../turned/turn-advice.ts';

/** The reports of the photos of one plant taken on one day. */
export interface SittingReports {
  readonly day: Day;
  readonly reports: readonly PhotoReport[];
  /** The views joined into one plan; `null` or left out when they are not. */
  readonly turned?: TurnedReport | null;
  /** Why the grower keeps it out of all advice, as limp from drought; `null` or left out when it counts. */
  readonly leftOut?: string | null;
}

/** A stop as the grower wrote it down. */
export interface PlantStop {
  readonly day: Day;
  readonly depth: 'tip' | 'deep';
}

/** What is known of a plant's light. */
export interface PlantLighting {
  /** How light and pot stand; `null` when the light's side is not known. */
  readonly place: LightPlace | null;
  readonly ledger: LightLedger;
  readonly rhythm: TurnRhythm;
}

/** The leaf of the newest sitting. */
export interface LeafHistory {
  readonly now: LeafSeen;
  /** An earlier photo that it may be held against; `null` when there is none. */
  readonly before: LeafSeen | null;
  /** The last day on which leaf was cleared, as the log tells; `null` when none is noted. */
  readonly clearedOn: Day | null;
}

/** All that advice rests on. */
export interface PlantHistory {
  readonly kind: PlantKind;
  readonly showDay: Day | null;
  /** The grower's calendar day: core has no clock. */
  readonly today: Day;
  /** Oldest first. */
  readonly sittings: readonly SittingReports[];
  /** In any order. */
  readonly stops: readonly PlantStop[];
  /** Left out when nothing is known of it. */
  readonly lighting?: PlantLighting;
  /** Left out or `null` when the newest sitting's leaf was not judged. */
  readonly leaf?: LeafHistory | null;
  /** What the plan of the stops knows beside the kind; left out: the table of defaults alone. */
  readonly season?: {
    readonly plantId: string;
    readonly variety: string;
    readonly knowledge: SeasonKnowledge;
    /** When the plant came into full bloom as its photographs show it; `null` or left out when they show none. */
    readonly fullBloomSeen?: Day | null;
  };
}

/** The newest sitting, measured or not. */
export function newestSitting({ sittings }: PlantHistory): SittingReports | null {
  return sittings.at(-1) ?? null;
}

/** Older than this, a shape says nothing about the plant of today. */
const STALE_DAYS = 21;

/** The measured reports of the newest sitting; `null` when there are none, the grower left it out or the plant has since outgrown them. */
export function newestMeasured(history: PlantHistory): SittingReports | null {
  const newest = newestSitting(history);
  if (newest === null || newest.leftOut != null) return null;
  if (daysBetween(newest.day, history.today) > STALE_DAYS) return null;
  const reports = newest.reports.filter(({ status }) => status === 'measured');
  return reports.length > 0 ? { day: newest.day, reports } : null;
}

/** Those of the newest measured reports whose scores may be compared with others. */
export function newestComparable(history: PlantHistory): SittingReports | null {
  const newest = newestMeasured(history);
  const reports = newest?.reports.filter(({ notCompared }) => notCompared === null) ?? [];
  return newest === null || reports.length === 0 ? null : { day: newest.day, reports };
}

/** The newest sitting whose plan says where the canopy's middle stands; `null` when there is none or the plant has outgrown it. */
export function newestTurned(
  history: PlantHistory,
): { readonly day: Day; readonly turned: TurnedReport } | null {
  const found = history.sittings.findLast(
    ({ turned, leftOut }) => leftOut == null && turned?.plan.lopsidedness != null,
  );
  if (!found?.turned || daysBetween(found.day, history.today) > STALE_DAYS) return null;
  return { day: found.day, turned: found.turned };
}

/** The last comparable report before the newest sitting that shows the plant from the same side. */
export function reportBefore(
  history: PlantHistory,
  report: PhotoReport,
): { readonly day: Day; readonly report: PhotoReport } | null {
  for (const sitting of history.sittings.slice(0, -1).reverse()) {
    const earlier = sitting.reports.find(
      ({ status, notCompared, turnDeg }) =>
        status === 'measured' && notCompared === null && turnDeg === report.turnDeg,
    );
    if (earlier) return { day: sitting.day, report: earlier };
  }
  return null;
}

/** The newest stop up to today. */
export function newestStop({ stops, today }: PlantHistory): PlantStop | null {
  const past = stops.filter(({ day }) => day <= today);
  return past.reduce<PlantStop | null>(
    (newest, stop) => (newest === null || stop.day > newest.day ? stop : newest),
    null,
  );
}
