import type { StopDepth } from '../cut/cut.ts';
import { addDays, type Day } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { AFTER_STOP } from './after-stop-days.ts';
import {
  type BloomQuestion,
  type DaysToBloom,
  daysToBloom,
  type NoDaysToBloom,
  type SeasonKnowledge,
} from './days-to-bloom.ts';
import { type LastStop, lastStop } from './last-stop.ts';
import { lastDepth, offWindow, stateOf, usualDays, windowsBack } from './planned-windows.ts';
import type { StopRole } from './stop-defaults.ts';
import { effectOfStop, type StopEffect } from './stop-effect.ts';
import { planWords, stepWords } from './stop-plan-words.ts';
import { seasonsApart } from './this-season.ts';
import { type DayWindow, matchedStops, type WrittenStop } from './written-stops.ts';

/** Whose stops are planned back from which show. */
export interface PlanQuestion extends Omit<BloomQuestion, 'depth'> {
  readonly showDay: Day;
  readonly today: Day;
  /** As written down, in any order, of this season or earlier ones; what lies after today is left out. */
  readonly stops: readonly WrittenStop[];
  /** When the plant came into full bloom as its photographs show it; `null` or left out when they show none. */
  readonly fullBloomSeen?: Day | null;
}

/** `overdue`: past its window, still possible. `left-out`: too late to be done, or a later one is done already. */
export type StepState = 'to-come' | 'open' | 'overdue' | 'done' | 'left-out';

/** One stop of the plan. */
export interface PlannedStop {
  readonly role: StopRole;
  readonly depth: StopDepth;
  readonly window: DayWindow;
  /** As growers usually do it, for comparison; `null` where nothing is printed or practised. */
  readonly usual: DayWindow | null;
  /** The last day on which it is of use: before the next stop's window it needs a month to break; the last one must not be late more often than not. */
  readonly latest: Day;
  readonly state: StepState;
  readonly doneOn: Day | null;
  /** Days outside the window: after it above 0, before it below 0; `null` while not done. */
  readonly offDays: number | null;
  readonly words: string;
}

export interface StopPlan {
  readonly ok: true;
  readonly showDay: Day;
  readonly acceptedLate: number;
  /** Earliest first. */
  readonly steps: readonly PlannedStop[];
  readonly last: LastStop;
  readonly bloomLastsDays: number;
  /** What the day of the last stop rests on. */
  readonly planned: DaysToBloom;
  /** Of the last stop as written down, else as planned, else of a stop today if its day is past; `null` where its depth has no figure. */
  readonly effect: StopEffect | null;
  readonly restsOn: 'written' | 'planned' | 'today';
  /** What that effect was reckoned with. */
  readonly days: DaysToBloom | null;
  /** If no last stop is given any more: of the earlier stop written down this season; `null` where there is none. */
  readonly withoutLast: StopEffect | null;
  /** The day on which it came into full bloom, once that is noted or photographed: then chances are past. */
  readonly bloomedOn: Day | null;
  readonly words: string;
}

export interface NoStopPlan {
  readonly ok: false;
  readonly reason: 'show-over' | NoDaysToBloom['reason'];
  readonly hint: string;
}

/**
 * The season's stops counted back from the show, with what is written down laid over them.
 *
 * @returns each stop's window and state, and what the last one, done or planned, means for the show; or why there is no plan
 *
 * How: the last stop's day is `lastStop`'s; each earlier one ends so many days before the next as the chain says. Stops written down are
 * matched to the latest step that they may be meant for (`matchedStops`). Once the last stop is written down, its own day and depth tell
 * when full bloom is likely.
 *
 * Notes: an earlier stop that was missed moves nothing: the last one decides the bloom. The plant's record of this very season is not
 * learned from here; it counts from the next plan on. A bloom that photographs show is the last stop's once that stop is written down:
 * before it, it is one of those that the stop takes away.
 *
 * Example: a fuchsia single for 13 August 2026 without records has its last stop on 2 to 8 June 2026, the last day 66 days before.
 */
export function stopPlan(question: PlanQuestion, known: SeasonKnowledge): StopPlan | NoStopPlan {
  const { showDay, today } = question;
  if (showDay < today) {
    const hint = `The show on ${dayInWords(showDay)} is over, so no stop can be counted back from it.`;
    return { ok: false, reason: 'show-over', hint };
  }
  const { earlier: records, bloomedOn: notedOn } = seasonsApart(question, known.records);
  const knowledge = { ...known, records };
  const defaults = knowledge.defaults.kinds[question.kind];
  const { acceptedLate, windowDays } = knowledge.defaults.weighing;
  const planned = daysToBloom({ ...question, depth: lastDepth(defaults) }, knowledge);
  if (!planned.ok) return planned;
  const last = lastStop(planned.belief, {
    showDay,
    acceptedLate: acceptedLate.value,
    windowDays: windowDays.value,
  });
  const evenChance = lastStop(planned.belief, { showDay, acceptedLate: 0.5, windowDays: 1 }).lastDay;
  const windows = windowsBack(defaults, last, windowDays.value);
  const written = matchedStops(
    windows,
    question.stops.filter(({ day }) => day <= today),
    showDay,
  );
  const steps = defaults.chain.map((step, index) => {
    const window = windows[index] as DayWindow;
    const stop = written[index] ?? null;
    const next = windows[index + 1];
    const latest = next === undefined ? evenChance : addDays(next.to, -AFTER_STOP.breakDays);
    const laterIsDone = written.slice(index + 1).some((later) => later !== null);
    const facts = {
      role: step.role,
      depth: step.depth,
      window,
      usual: usualDays(defaults, step, showDay),
      latest,
      state: stop !== null ? 'done' : laterIsDone ? 'left-out' : stateOf(window, latest, today),
      doneOn: stop?.day ?? null,
      offDays: stop === null ? null : offWindow(window, stop.day),
    } as const;
    return { ...facts, words: stepWords(facts) };
  });
  const lastWritten = written.at(-1) ?? null;
  const restsOn = lastWritten !== null ? 'written' : today > last.lastDay ? 'today' : 'planned';
  const stopDay = lastWritten?.day ?? (restsOn === 'today' ? today : last.lastDay);
  const depth = lastWritten?.depth ?? planned.depth;
  const lastsDays = defaults.bloomLastsDays.value;
  const tellEffect = (stop: WrittenStop) => {
    const told = daysToBloom({ ...question, depth: stop.depth }, knowledge);
    if (!told.ok) return { days: null, effect: null };
    return {
      days: told,
      effect: effectOfStop({ stopDay: stop.day, depth: stop.depth, showDay }, told.belief, lastsDays),
    };
  };
  const seen = question.fullBloomSeen ?? null;
  const seenOn = lastWritten !== null && seen !== null && seen >= lastWritten.day ? seen : null;
  const earlier = lastWritten === null ? written.findLast((stop) => stop !== null) : null;
  const plan = {
    showDay,
    acceptedLate: acceptedLate.value,
    steps,
    last,
    bloomLastsDays: lastsDays,
    planned,
    restsOn,
    ...tellEffect({ day: stopDay, depth }),
    bloomedOn: notedOn ?? seenOn,
    withoutLast: earlier ? tellEffect(earlier).effect : null,
  } as const;
  return { ok: true, ...plan, words: planWords(plan, notedOn !== null) };
}
