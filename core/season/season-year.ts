import { addDays, type Day, daysBetween } from '../day/day.ts';
import type { PlantKind } from '../plant.ts';
import type { Repeatable } from '../trend/change-since.ts';
import { firstOfKind, type LogEntry } from './log-entry.ts';
import { seasonLessons } from './season-lessons.ts';
import type { Show } from './show.ts';
import type { StopPlan } from './stop-plan.ts';
import type { WrittenStop } from './written-stops.ts';

/** One sitting of the year; a score that was not measured is `null`. */
export interface YearSitting {
  readonly sittingId: string;
  readonly day: Day;
  readonly roundness: Repeatable | null;
  readonly symmetry: Repeatable | null;
  readonly lopsidedness: Repeatable | null;
  /** Why it is kept out of the trend; `null` when it counts. */
  readonly setAside: string | null;
}

/** What a plant's year is put together from. */
export interface YearQuestion {
  readonly plantId: string;
  readonly kind: PlantKind;
  readonly variety: string;
  /** First and last day of the year, both counted. */
  readonly from: Day;
  readonly to: Day;
  readonly sittings: readonly YearSitting[];
  readonly stops: readonly WrittenStop[];
  readonly log: readonly LogEntry[];
  /** The show it was grown for, and the plan as it stood on the day; `null` where there was none. */
  readonly show: Show | null;
  readonly plan: StopPlan | null;
}

/** How a plant flowered. */
export interface YearBloom {
  readonly firstFlowerDay: Day | null;
  readonly fullBloomDay: Day | null;
  /** From the last stop before it. */
  readonly daysFromLastStop: number | null;
  /** Full bloom after the show above 0, before it below 0; `null` where either is not known. */
  readonly daysAfterShow: number | null;
}

/** A plant's year in one value, oldest first. */
export interface SeasonYear extends YearQuestion {
  readonly bloom: YearBloom;
  /** The last sitting that counts within a fortnight before the show. */
  readonly atShow: YearSitting | null;
  readonly result: LogEntry | null;
  /** What the facts say for next time, each a sentence. */
  readonly lessons: readonly string[];
}

/** A photo this many days before the show still tells the plant's shape on the day. */
const NEAR_SHOW_DAYS = 14;

/**
 * A plant's year: sittings, stops, log, bloom, show, and what to do differently, from facts alone.
 *
 * @param question facts of any time; those outside `from` to `to` are left out
 */
export function seasonYear(question: YearQuestion): SeasonYear {
  const { from, to, show } = question;
  const within = <T extends { readonly day: Day }>(list: readonly T[]): T[] =>
    list
      .filter(({ day }) => day >= from && day <= to)
      .sort((one, other) => (one.day === other.day ? 0 : one.day < other.day ? -1 : 1));
  const facts = {
    ...question,
    sittings: within(question.sittings),
    stops: within(question.stops),
    log: within(question.log),
  };
  const atShow =
    show === null
      ? null
      : (facts.sittings.findLast(
          ({ day, setAside }) =>
            setAside === null && day <= show.day && day >= addDays(show.day, -NEAR_SHOW_DAYS),
        ) ?? null);
  const year = {
    ...facts,
    bloom: bloomOf(facts),
    atShow,
    result: firstOfKind(facts.log, ['show-result'], show?.day ?? from, to),
  };
  return { ...year, lessons: seasonLessons(year) };
}

function bloomOf({ stops, log, show, from, to }: YearQuestion): YearBloom {
  const firstFlowerDay = firstOfKind(log, ['first-flower'], from, to)?.day ?? null;
  const fullBloomDay = firstOfKind(log, ['full-bloom'], from, to)?.day ?? null;
  const stop = fullBloomDay === null ? null : (stops.findLast(({ day }) => day < fullBloomDay) ?? null);
  return {
    firstFlowerDay,
    fullBloomDay,
    daysFromLastStop: stop === null || fullBloomDay === null ? null : daysBetween(stop.day, fullBloomDay),
    daysAfterShow: show === null || fullBloomDay === null ? null : daysBetween(show.day, fullBloomDay),
  };
}
