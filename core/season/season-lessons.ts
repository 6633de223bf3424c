import { dayInWords } from '../day/day-in-words.ts';
import { changeSince } from '../trend/change-since.ts';
import type { SeasonYear, YearSitting } from './season-year.ts';
import { days } from './stop-plan-words.ts';

type Year = Omit<SeasonYear, 'lessons'>;

/**
 * What a year says for the next one, each a sentence that rests on what was noted; what was not noted is said too.
 *
 * Example: "In full bloom on 25 June 2026, 5 days after the show: too late. The last stop 5 days sooner, all else alike, would have met it."
 */
export function seasonLessons(year: Year): string[] {
  return [bloomLesson(year), timeLesson(year), stopLesson(year), shapeLesson(year)].filter(
    (lesson) => lesson !== null,
  );
}

function bloomLesson({ bloom, plan, show }: Year): string | null {
  if (bloom.fullBloomDay === null) {
    return 'The day of full bloom is not noted, so nothing can be learned of how long it takes: note it next time.';
  }
  const { daysAfterShow } = bloom;
  if (show === null || daysAfterShow === null) return null;
  const on = `In full bloom on ${dayInWords(bloom.fullBloomDay)}`;
  if (daysAfterShow > 0) {
    return `${on}, ${days(daysAfterShow)} after the show: too late. The last stop ${days(daysAfterShow)} sooner, all else alike, would have met it.`;
  }
  if (daysAfterShow === 0) return `${on}, the day of the show.`;
  const early = -daysAfterShow;
  const overBy = plan === null ? null : early - plan.bloomLastsDays + 1;
  return overBy !== null && overBy > 0
    ? `${on}, ${days(early)} before the show: early. The last stop ${days(overBy)} later, or taking off the first bloom, would have kept it, if full bloom lasts ${days(plan?.bloomLastsDays ?? 0)}.`
    : `${on}, ${days(early)} before the show: in time.`;
}

function timeLesson({ bloom, plan }: Year): string | null {
  const took = bloom.daysFromLastStop;
  if (took === null || plan?.days == null) return null;
  const { meanDays, next90Days } = plan.days;
  const [low, high] = next90Days;
  const usual = took >= low && took <= high ? 'within what was expected' : 'outside what was expected';
  return `From the last stop to full bloom it took ${days(took)}, ${usual} (${Math.round(low)} to ${Math.round(high)}, ${Math.round(meanDays)} on average). The next plan counts it as your own record, unless a note sets it aside.`;
}

function stopLesson({ plan }: Year): string | null {
  const last = plan?.steps.at(-1);
  if (last === undefined) return null;
  if (last.offDays === null) return 'No last stop is written down.';
  if (last.offDays === 0) return 'The last stop was done as planned.';
  const off = last.offDays > 0 ? 'after the planned days' : 'before the planned days';
  return `The last stop was done ${days(Math.abs(last.offDays))} ${off}.`;
}

function shapeLesson({ sittings, atShow, show }: Year): string | null {
  if (show === null) return null;
  if (atShow?.roundness == null) return 'No photo near the show tells its shape.';
  const first = sittings.find(({ setAside, roundness }) => setAside === null && roundness !== null);
  const at = `Roundness near the show ${scoreInWords(atShow)}`;
  if (first?.roundness == null || first === atShow) return `${at}.`;
  const change = changeSince(first.roundness, atShow.roundness);
  const since = `since ${dayInWords(first.day)}`;
  if (change.direction === 'none') return `${at}: no change ${since}.`;
  const word = change.direction === 'up' ? 'rounder' : 'less round';
  return `${at}: ${word} by ${Math.abs(change.by).toFixed(1)} ${since}.`;
}

function scoreInWords({ roundness, day }: YearSitting): string {
  return `${roundness?.value.toFixed(1)} ± ${roundness?.plusMinus.toFixed(1)}, on ${dayInWords(day)}`;
}
