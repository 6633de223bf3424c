import { addDays } from '../../core/day/day.ts';
import { allDayEvents } from '../../core/season/all-day-events.ts';
import { calendarWeeks } from '../../core/season/calendar-week.ts';
import { type DayRange, WEEKLY_WORK } from '../../core/season/work.ts';
import { type AimedPlant, allAimedPlants } from '../bench/aimed-plant.ts';
import { bloomNow } from '../condition/bloom-so-far.ts';
import type { Calendar } from '../schemas/season.ts';
import { calendarKey } from '../store/calendar-key.ts';
import type { Database } from '../store/database.ts';
import { rememberingPlants } from '../store/remembering.ts';
import { inTurns } from './in-turns.ts';
import { planOf, workOfPlant } from './plant-season.ts';
import type { SeasonFacts } from './season-facts.ts';

const rememberedRow = rememberingPlants<Calendar['plants'][number]>();

/** The season of all plants on the bench, between two days; what comes round every week only where `withWeekly` asks for it. */
export async function calendar(
  db: Database,
  facts: () => SeasonFacts,
  range: DayRange,
  withWeekly: boolean,
): Promise<Calendar> {
  const isIn = ({ day }: { readonly day: string }) => day >= range.from && day <= range.to;
  const plants = await inTurns(db, facts, (now, plant) =>
    rememberedRow(
      db,
      { plantId: plant.id, asked: [...now.restsOn(plant), range.from, range.to, withWeekly] },
      () => calendarRow(db, now, plant, range, withWeekly),
    ),
  );
  const { today, shows } = facts();
  return {
    today,
    ...range,
    weeks: calendarWeeks(range.from, range.to),
    shows: shows.filter(isIn),
    plants,
    subscribePath: `/api/calendar/${calendarKey(db)}.ics`,
  };
}

function calendarRow(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  range: DayRange,
  withWeekly: boolean,
): Calendar['plants'][number] {
  const isIn = ({ day }: { readonly day: string }) => day >= range.from && day <= range.to;
  const { id, name, kind, variety, showId } = plant;
  const plan = planOf(db, facts, plant);
  return {
    plantId: id,
    name,
    kind,
    variety,
    showIds: facts.entries.get(id).map((entry) => entry.showId),
    aimShowId: showId,
    isBloomUnderWay: bloomNow(db, facts, plant).isUnderWay,
    steps: plan?.ok ? plan.steps : [],
    bloom90: plan?.ok ? (plan.effect?.bloom90 ?? null) : null,
    bloomLastsDays: plan?.ok ? plan.bloomLastsDays : null,
    stops: facts.stops.get(id).filter(isIn),
    notes: facts.notes.get(id).filter(isIn),
    work: workOfPlant(db, facts, plant, range, plan).filter(
      ({ kind: work }) => withWeekly || !WEEKLY_WORK.includes(work),
    ),
  };
}

/** Weekly work is counted anew from each time it is done; farther ahead its days would only move. */
const WEEKLY_AHEAD_DAYS = 56;

/** The same as a file for calendar programs. */
export async function calendarAsFile(
  db: Database,
  facts: SeasonFacts,
  range: DayRange,
  withWeekly: boolean,
): Promise<string> {
  const plants = plantsOnBench(db, facts);
  const weeklyTo = addDays(facts.today, WEEKLY_AHEAD_DAYS);
  const events = allDayEvents({
    shows: facts.shows.filter(({ day }) => day >= range.from),
    entries: plants.flatMap(({ id }) => facts.entries.get(id)),
    work: plants
      .flatMap((plant) => workOfPlant(db, facts, plant, range))
      .filter(({ kind, day }) => day <= weeklyTo || !WEEKLY_WORK.includes(kind)),
    plantNames: new Map(plants.map(({ id, name }) => [id, name])),
    withWeekly,
  });
  const { calendarFile } = await import('./calendar-file.ts');
  return calendarFile(events);
}

function plantsOnBench(db: Database, { today }: SeasonFacts) {
  return allAimedPlants(db, today).filter(({ putAway }) => !putAway);
}
