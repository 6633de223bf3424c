import { type Day, daysBetween } from '../day/day.ts';
import type { PlantKind } from '../plant.ts';
import type { PhotoReport } from '../report.ts';

/** The reports of the photos of one plant taken on one day. */
export interface SittingReports {
  readonly day: Day;
  readonly reports: readonly PhotoReport[];
}

/** A stop as the grower wrote it down. */
export interface PlantStop {
  readonly day: Day;
  readonly depth: 'tip' | 'deep';
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
}

/** The newest sitting, measured or not. */
export function newestSitting({ sittings }: PlantHistory): SittingReports | null {
  return sittings.at(-1) ?? null;
}

/** Older than this, a shape says nothing about the plant of today. */
const STALE_DAYS = 21;

/** The measured reports of the newest sitting; `null` when there are none or the plant has since outgrown them. */
export function newestMeasured(history: PlantHistory): SittingReports | null {
  const newest = newestSitting(history);
  if (newest === null || daysBetween(newest.day, history.today) > STALE_DAYS) return null;
  const reports = newest.reports.filter(({ status }) => status === 'measured');
  return reports.length > 0 ? { day: newest.day, reports } : null;
}

/** Those of the newest measured reports whose scores may be compared with others. */
export function newestComparable(history: PlantHistory): SittingReports | null {
  const newest = newestMeasured(history);
  const reports = newest?.reports.filter(({ notCompared }) => notCompared === null) ?? [];
  return newest === null || reports.length === 0 ? null : { day: newest.day, reports };
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
