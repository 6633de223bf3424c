import type { Advice } from '../../core/advice/advice.ts';
import { adviseFromSittings } from '../../core/advice/advise-from-sittings.ts';
import type { Day } from '../../core/day/day.ts';
import type { TrendPoint } from '../schemas/pages.ts';
import type { Sitting, Stop } from '../schemas/sitting.ts';
import type { PlantRow } from '../store/plants.ts';

/** What is known of a plant, as of `today`. */
export interface PlantSoFar {
  readonly plant: PlantRow;
  /** Newest first. */
  readonly sittings: readonly Sitting[];
  readonly stops: readonly Stop[];
  readonly today: Day;
}

/** The trend of a plant, oldest first, and what to do with it, the most urgent first. */
export function advisePlant({ plant, sittings, stops, today }: PlantSoFar): {
  trend: TrendPoint[];
  advice: Advice[];
} {
  const oldestFirst = sittings.toReversed();
  const advice = adviseFromSittings({
    kind: plant.kind,
    showDay: plant.showDay,
    today,
    sittings: oldestFirst.map(({ day, views }) => ({
      day,
      reports: views.flatMap(({ report }) => report ?? []),
    })),
    stops,
  });
  return { trend: oldestFirst.map(trendPoint), advice };
}

/** A sitting's row of trend: its first measured view from the stand's place. What was not measured stays unknown. */
function trendPoint({ id, day, views }: Sitting): TrendPoint {
  const measured = views.flatMap(({ report }) => (report?.status === 'measured' ? [report] : []));
  const report = measured.find(({ notCompared }) => notCompared === null);
  return {
    sittingId: id,
    day,
    roundness: report?.roundness?.score ?? null,
    roundnessPlusMinus: report?.roundness?.plusMinus ?? null,
    symmetry: report?.symmetry?.score ?? null,
    symmetryPlusMinus: report?.symmetry?.plusMinus ?? null,
    lopsidedness: report?.lopsidedness?.percent ?? null,
    lopsidednessPlusMinus: report?.lopsidedness?.plusMinus ?? null,
    radiusMm: report?.ball?.radiusMm ?? null,
    leftOut: report === undefined ? (measured[0]?.notCompared ?? null) : null,
  };
}
