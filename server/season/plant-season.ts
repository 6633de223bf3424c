import { addDays, type Day } from '../../core/day/day.ts';
import { workOf } from '../../core/season/after-care.ts';
import { type NoStopPlan, type StopPlan, stopPlan } from '../../core/season/stop-plan.ts';
import type { DayRange, PlantSeason } from '../../core/season/work.ts';
import { type WorkNow, workNow } from '../../core/season/work-now.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import { bloomNow } from '../condition/bloom-so-far.ts';
import { localDay } from '../local-day.ts';
import type { Database } from '../store/database.ts';
import type { SeasonFacts } from './season-facts.ts';

/** A plant's stops planned back from its show; `null` when it is entered for none. */
export function planOf(db: Database, facts: SeasonFacts, plant: AimedPlant): StopPlan | NoStopPlan | null {
  const { id, kind, variety, showDay } = plant;
  if (showDay === null) return null;
  const stops = facts.stops.get(id);
  const fullBloomSeen = bloomNow(db, facts, plant).bloom?.fullOn ?? null;
  const question = { plantId: id, kind, variety, showDay, today: facts.today, stops, fullBloomSeen };
  return stopPlan(question, facts.knowledgeOf(kind));
}

/** All that a plant's work follows from. */
function seasonOf(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  plan: ReturnType<typeof planOf>,
): PlantSeason {
  const { id, kind, showId, turnRhythm, workRhythm } = plant;
  const show = facts.shows.find((one) => one.id === showId) ?? null;
  return {
    plantId: id,
    kind,
    fromDay: localDay(new Date(plant.createdAt)),
    show: show !== null && show.day >= facts.today ? show : null,
    plan: plan?.ok ? plan : null,
    stops: facts.stops.get(id),
    log: facts.notes.get(id),
    sittingDays: facts.sittingDays.get(id),
    turnDays: facts.turnDays.get(id),
    turnRhythm,
    rhythm: workRhythm,
    ownWork: facts.ownWork.get(id),
    bloom: bloomNow(db, facts, plant).bloom,
  };
}

/** A plant's work in a range of days, as it stands. */
export function workOfPlant(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  range: DayRange,
  plan: ReturnType<typeof planOf> = planOf(db, facts, plant),
): WorkNow[] {
  const work = workOf(seasonOf(db, facts, plant, plan), facts.today, range);
  return workNow(work, facts.workWords.get(plant.id), facts.today);
}

/** What a plant's page lists: a month back, so that what lapsed is still said, and half a year ahead. */
export function usualRange(today: Day): DayRange {
  return { from: addDays(today, -28), to: addDays(today, 182) };
}
