import { type Day, daysBetween } from '../day/day.ts';
import { dayInWords } from '../day/day-in-words.ts';
import { chanceInBloom } from './bloom-likely.ts';
import { chanceLate } from './last-stop.ts';
import type { Entry, Show } from './show.ts';
import { percent } from './stop-effect.ts';
import type { StopPlan } from './stop-plan.ts';
import { days } from './stop-plan-words.ts';

/** The show that rules a plant's stops, and the others it is entered for. */
export interface AimedShow {
  readonly aim: Show;
  /** By day; shows that are over are left out. */
  readonly others: readonly Show[];
}

/**
 * The show that a plant's stops are planned for: the one the grower picked, else the first by date that is not over.
 *
 * @param picked id of a show; one that is over or not entered for is passed over
 * @returns `null` when the plant is entered for no show to come
 */
export function aimedShow(
  plantId: string,
  shows: readonly Show[],
  entries: readonly Entry[],
  { today, picked }: { today: Day; picked: string | null },
): AimedShow | null {
  const entered = entries.filter((entry) => entry.plantId === plantId).map(({ showId }) => showId);
  const toCome = shows
    .filter(({ id, day }) => entered.includes(id) && day >= today)
    .sort((one, other) => (one.day < other.day ? -1 : 1));
  const aim = toCome.find(({ id }) => id === picked) ?? toCome[0];
  return aim === undefined ? null : { aim, others: toCome.filter((show) => show !== aim) };
}

/** What the plan for one show does to another. */
export interface OtherShow {
  readonly showId: string;
  readonly chanceInBloom: number;
  readonly chanceLate: number;
  readonly words: string;
}

/**
 * How likely a plant planned for one show is in full bloom at another.
 *
 * @returns `null` where nothing is known of the time to bloom after its last stop
 *
 * Notes: first bloom only. Bloom that was taken off, or a second flush, is not in it.
 */
export function effectOnOtherShow(plan: StopPlan, other: Show): OtherShow | null {
  const { effect, days: rests } = plan;
  if (effect === null || rests === null) return null;
  const inBloom = chanceInBloom(rests.belief, effect.stopDay, plan.bloomLastsDays, other.day);
  const late = chanceLate(rests.belief, effect.stopDay, other.day);
  const apart = daysBetween(plan.showDay, other.day);
  const when = apart === 0 ? 'the same day' : `${days(Math.abs(apart))} ${apart > 0 ? 'later' : 'earlier'}`;
  const rest =
    apart >= 0
      ? `that it is over by then, if no bloom is taken off, is ${percent(Math.max(0, 1 - inBloom - late))}`
      : `that it is not yet in full bloom is ${percent(late)}`;
  return {
    showId: other.id,
    chanceInBloom: inBloom,
    chanceLate: late,
    words: `${other.name}, ${dayInWords(other.day)}, ${when}: the chance that the plant is in full bloom is ${percent(inBloom)}; ${rest}. The stops are planned for ${dayInWords(plan.showDay)}.`,
  };
}
