import { addDays, type Day, day } from '../../core/day/day.ts';
import { type SeasonYear, seasonYear, type YearSitting } from '../../core/season/season-year.ts';
import type { Show } from '../../core/season/show.ts';
import { type StopPlan, stopPlan } from '../../core/season/stop-plan.ts';
import type { DayRange } from '../../core/season/work.ts';
import type { AimedPlant } from '../bench/aimed-plant.ts';
import { briefSittings, type SeenSitting, type SeenView } from '../bench/seen-sitting.ts';
import type { PlantYear } from '../schemas/season.ts';
import type { Note } from '../schemas/sitting.ts';
import type { Database } from '../store/database.ts';
import { planAnswer } from './season-answer.ts';
import type { SeasonFacts } from './season-facts.ts';

/** A plant's year: from the day after the show before to the show, or the calendar year without one. */
export function plantYear(
  db: Database,
  facts: SeasonFacts,
  plant: AimedPlant,
  asked: Partial<DayRange>,
): PlantYear {
  const sittings = briefSittings(db, plant.id);
  const range = { ...usualYear(facts, plant), ...asked };
  const show = showWithin(facts, plant, range);
  const log = facts.notes.get(plant.id).toReversed();
  const year = seasonYear({
    plantId: plant.id,
    kind: plant.kind,
    variety: plant.variety,
    ...range,
    sittings: yearSittings(sittings),
    stops: [...facts.stops.get(plant.id)],
    log,
    show,
    plan: show === null ? null : planOnTheDay(facts, plant, show),
  });
  return yearAnswer(year, { plant, facts, sittings, log });
}

interface Beside {
  readonly plant: AimedPlant;
  readonly facts: SeasonFacts;
  readonly sittings: readonly SeenSitting[];
  readonly log: readonly Note[];
}

function yearAnswer(year: SeasonYear, { plant, facts, sittings, log }: Beside): PlantYear {
  const { plantId, kind, variety, from, to, show, stops, bloom, atShow, plan, lessons } = year;
  const entry = facts.entries.get(plantId).find((one) => one.showId === show?.id);
  const noted = entry?.result || year.result?.text || null;
  const pictures = new Map(sittings.map(({ id, views }) => [id, `/api/views/${views.at(-1)?.id}/picture`]));
  return {
    plantId,
    name: plant.name,
    kind,
    variety,
    from,
    to,
    show,
    result: noted,
    sittings: year.sittings.map((sitting) => ({
      ...sitting,
      pictureUrl: pictures.get(sitting.sittingId) ?? null,
    })),
    stops: stops.map(({ day: on, depth }) => ({ day: on, depth })),
    log: log.filter((note) => note.day >= from && note.day <= to),
    bloom,
    atShow,
    plan: plan === null ? null : planAnswer(plan),
    lessons,
  };
}

/** One row a sitting, oldest first, by its first measured view. */
function yearSittings(sittings: readonly SeenSitting[]): YearSitting[] {
  return sittings.toReversed().map(({ id, day: on, views }) => {
    const { report } = (views.find((view) => view.report?.status === 'measured') ?? views[0]) as SeenView;
    const score = (one: { score: number; plusMinus: number } | null | undefined) =>
      one == null ? null : { value: one.score, plusMinus: one.plusMinus };
    const lopsided = report?.lopsidedness ?? null;
    return {
      sittingId: id,
      day: on,
      roundness: score(report?.roundness),
      symmetry: score(report?.symmetry),
      lopsidedness: lopsided === null ? null : { value: lopsided.percent, plusMinus: lopsided.plusMinus },
      setAside: report?.notCompared ?? null,
    };
  });
}

/** The show of the range that the plant is entered for; the last when there are several. */
function showWithin(facts: SeasonFacts, plant: AimedPlant, { from, to }: DayRange): Show | null {
  const entered = showsEntered(facts, plant);
  return entered.findLast((show) => show.day >= from && show.day <= to) ?? null;
}

function showsEntered(facts: SeasonFacts, plant: AimedPlant): Show[] {
  const ids = facts.entries.get(plant.id).map(({ showId }) => showId);
  return facts.shows.filter(({ id }) => ids.includes(id));
}

const FORTNIGHT = 14;
const YEAR_DAYS = 365;

/** Up to a fortnight after the show that the plant is aimed at, from a fortnight after the one before. */
function usualYear(facts: SeasonFacts, plant: AimedPlant): { from: Day; to: Day } {
  const shows = showsEntered(facts, plant);
  const at = shows.findIndex(({ id }) => id === plant.showId);
  const show = shows[at];
  if (show === undefined) {
    const year = facts.today.slice(0, 4);
    return { from: day(`${year}-01-01`), to: day(`${year}-12-31`) };
  }
  const before = shows[at - 1];
  const to = addDays(show.day, FORTNIGHT);
  const aYear = addDays(show.day, -YEAR_DAYS + FORTNIGHT + 1);
  const from = before === undefined ? aYear : addDays(before.day, FORTNIGHT + 1);
  return { from: [from, aYear].sort().at(-1) as Day, to };
}

/** The plan as it stood on the day of the show, or stands today. */
function planOnTheDay(facts: SeasonFacts, plant: AimedPlant, show: Show): StopPlan | null {
  const { id, kind, variety } = plant;
  const [today] = [show.day, facts.today].sort() as [Day, Day];
  const stops = facts.stops.get(id);
  const question = { plantId: id, kind, variety, showDay: show.day, today, stops };
  const plan = stopPlan(question, facts.knowledgeOf(kind));
  return plan.ok ? plan : null;
}
