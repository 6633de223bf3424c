import { bloomPicture } from '../../core/season/bloom-likely.ts';
import type { StopPlan } from '../../core/season/stop-plan.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import type { PlantSeasonAnswer } from '../schemas/season.ts';
import type { Database } from '../store/database.ts';
import { entryAnswers } from './entry-answers.ts';
import { planOf, usualRange, workOfPlant } from './plant-season.ts';
import type { SeasonFacts } from './season-facts.ts';

/** Show, plan, work and records of one plant. */
export function seasonAnswer(db: Database, facts: SeasonFacts, plant: AimedPlant): PlantSeasonAnswer {
  const planned = planOf(db, facts, plant);
  const plan = planned?.ok ? planned : null;
  return {
    plantId: plant.id,
    today: facts.today,
    entries: entryAnswers(db, facts, plant, plan),
    plan: plan === null ? null : planAnswer(plan),
    planWhyNot: planned?.ok === false ? planned.hint : null,
    bloomDays: plan === null ? [] : bloomDays(plan),
    records: [...facts.records.get(plant.id)],
    work: workOfPlant(db, facts, plant, usualRange(facts.today), planned),
    ownWork: [...facts.ownWork.get(plant.id)],
    stops: [...facts.stops.get(plant.id)],
    notes: [...facts.notes.get(plant.id)],
    seasonNotes: facts.seasonNotes.filter(({ plantId }) => plantId === null || plantId === plant.id),
  };
}

/** A plan without the figures that only core reckons with. */
export function planAnswer(plan: StopPlan): NonNullable<PlantSeasonAnswer['plan']> {
  const { showDay, acceptedLate, steps, bloomLastsDays, effect, restsOn, bloomedOn, words } = plan;
  const { fromDay, lastDay, daysBeforeShow, chanceLate } = plan.last;
  const { ok: _, belief: __, parts: ___, ...planned } = plan.planned;
  return {
    showDay,
    acceptedLate,
    steps,
    last: { fromDay, lastDay, daysBeforeShow, chanceLate },
    bloomLastsDays,
    planned,
    effect,
    restsOn,
    bloomedOn,
    words,
  };
}

function bloomDays({ days, effect, bloomLastsDays }: StopPlan): PlantSeasonAnswer['bloomDays'] {
  return days === null || effect === null ? [] : bloomPicture(days.belief, effect.stopDay, bloomLastsDays);
}
