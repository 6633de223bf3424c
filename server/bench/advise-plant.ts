import type { Advice } from '../../core/advice/advice.ts';
import { adviseFromSittings } from '../../core/advice/advise-from-sittings.ts';
import type { PlantHistory } from '../../core/advice/plant-history.ts';
import type { Day } from '../../core/day/day.ts';
import type { SeasonKnowledge } from '../../core/season/days-to-bloom.ts';
import type { TrendPoint } from '../schemas/pages.ts';
import type { Stop } from '../schemas/sitting.ts';
import type { AimedPlant } from './aimed-plant.ts';
import type { SeenSitting } from './seen-sitting.ts';

/** What is known of a plant, as of `today`. */
export interface PlantSoFar {
  readonly plant: AimedPlant;
  /** Newest first. */
  readonly sittings: readonly SeenSitting[];
  readonly stops: readonly Stop[];
  readonly today: Day;
  readonly knowledge: SeasonKnowledge;
  /** When it came into full bloom as the photographs show it; `null` when they show none. */
  readonly fullBloomSeen: Day | null;
}

/** A plant's past in the form that advice rests on. */
export function plantHistory(soFar: PlantSoFar): PlantHistory {
  const { plant, sittings, stops, today, knowledge, fullBloomSeen } = soFar;
  return {
    kind: plant.kind,
    showDay: plant.showDay,
    today,
    sittings: sittings.toReversed().map(({ day, views, turned, leftOut }) => ({
      day,
      reports: views.flatMap(({ report }) => report ?? []),
      turned,
      leftOut,
    })),
    stops,
    season: { plantId: plant.id, variety: plant.variety, knowledge, fullBloomSeen },
  };
}

/** The trend of a plant, oldest first, and what to do with it, the most urgent first. */
export function advisePlant(
  history: PlantHistory,
  sittings: readonly SeenSitting[],
): { trend: TrendPoint[]; advice: Advice[] } {
  return { trend: sittings.toReversed().map(trendPoint), advice: adviseFromSittings(history) };
}

/** A sitting's row of trend: its first measured view from the stand's place, before any work. What was not measured stays unknown. */
function trendPoint({ id, day, views }: SeenSitting): TrendPoint {
  const measured = views.flatMap(({ report, afterWork }) =>
    report?.status === 'measured' && !afterWork ? [report] : [],
  );
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
