import { effectOnOtherShow } from '../../core/season/aimed-show.ts';
import { type EntryCheck, entryChecks, type PlantSize } from '../../core/season/entry-checks.ts';
import type { Show } from '../../core/season/show.ts';
import type { StopPlan } from '../../core/season/stop-plan.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import type { PlantSeasonAnswer } from '../schemas/season.ts';
import type { EntryRow } from '../schemas/show.ts';
import type { Database } from '../store/database.ts';
import { newestMeasuredView } from '../store/views.ts';
import type { SeasonFacts } from './season-facts.ts';

/** The shows a plant is entered for, by day, each with what its class says of the plant now. */
export function entryAnswers(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  plan: StopPlan | null,
): PlantSeasonAnswer['entries'] {
  const entered = facts.entries.get(plant.id);
  if (entered.length === 0) return [];
  const size = plantSize(db, plant);
  return entered.flatMap((entry) => {
    const show = facts.shows.find(({ id }) => id === entry.showId);
    if (show === undefined) return [];
    const isOver = show.day < facts.today;
    const isAim = show.id === plant.showId && !isOver;
    return {
      ...entry,
      ...againstClass(entry, show, isOver ? null : size),
      show,
      isOver,
      isAim,
      effect: plan === null || isAim || isOver ? null : effectOnOtherShow(plan, show),
    };
  });
}

/** The class an entry still has, and what that class says of the plant; with `null` for its size, nothing more is checked. */
export function againstClass(
  { classId }: Pick<EntryRow, 'classId'>,
  show: Show,
  size: PlantSize | null,
): { readonly classId: string | null; readonly checks: EntryCheck[] } {
  const entryClass = show.classes.find(({ id }) => id === classId) ?? null;
  return {
    classId: entryClass?.id ?? null,
    checks: entryClass === null || size === null ? [] : entryChecks(size, entryClass),
  };
}

/** A plant's size by its newest measured photo. */
export function plantSize(db: Database, plant: AimedPlant): PlantSize {
  const view = newestMeasuredView(db, plant.id);
  const { canopy, ball } = view?.report ?? {};
  return {
    rimMm: plant.rimMm,
    widthMm: canopy?.widthMm ?? null,
    heightMm: canopy?.heightMm ?? null,
    // Two edges of the canopy are as unsure as two of the ball's.
    plusMinusMm: ball?.radiusPlusMinusMm == null ? null : 2 * ball.radiusPlusMinusMm,
    measuredOn: view?.day ?? null,
  };
}
