import { day, daysBetween } from '../../../../core/day/day.ts';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import fold from '../../parts/twin.module.css';
import { dayWords } from '../../words/day-words.ts';
import { chanceOn } from './bloom-drawing.ts';
import { chanceWords, type Plan, ROLE_WORDS, todayOf, windowWords } from './plan-words.ts';

/** The picture in words: stops, weeks with their chance, shows. */
export function BloomTable({ season, plan }: { season: PlantSeasonAnswer; plan: Plan }) {
  const today = todayOf(season);
  const { bloomDays } = season;
  const first = bloomDays[0];
  const shows = season.entries.filter(({ isOver }) => !isOver).map(({ show }) => show);
  const rows = [
    ...plan.steps.map(({ role, window, doneOn }) => ({
      day: doneOn ?? window.from,
      when: doneOn === null ? windowWords(window, today) : dayWords(doneOn, today),
      what: `${ROLE_WORDS[role]}${doneOn === null ? ', planned' : ', done'}`,
      isShow: false,
    })),
    ...bloomDays
      .filter((one) => first && daysBetween(day(first.day), day(one.day)) % 7 === 0)
      .map((one) => ({
        day: one.day,
        when: dayWords(one.day, today),
        what: `in full bloom: ${chanceWords(one.chance)}`,
        isShow: false,
      })),
    ...shows.map((show) => ({
      day: show.day,
      when: dayWords(show.day, today),
      what: `${show.name}. In full bloom: ${chanceWords(chanceOn(bloomDays, show.day))}`,
      isShow: true,
    })),
  ].sort((one, other) => (one.day < other.day ? -1 : 1));
  return (
    <details className={fold.twin}>
      <summary>The same as a table</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">Day</th>
            <th scope="col">What</th>
          </tr>
        </thead>
        <tbody>
          {rows.map(({ when, what, isShow }) => (
            <tr key={`${when}${what}`} data-stop={isShow || undefined}>
              <td>{when}</td>
              <td>{what}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
