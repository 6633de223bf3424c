import { addDays, type Day, day, daysBetween } from '../../../../core/day/day.ts';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import type { Plan } from './plan-words.ts';

type BloomDays = PlantSeasonAnswer['bloomDays'];

/** Heights of the picture, CSS px: all of it, its ground line, and a chance of 100 % above that. */
export const HEIGHT = 206;
export const GROUND = 138;
export const HILL = 92;

/** First and last day of the picture. */
export interface PictureDays {
  readonly from: Day;
  readonly to: Day;
}

/** From the earliest stop or today to the end of bloom or the show, with a little room. */
export function pictureDays(plan: Plan, bloomDays: BloomDays, today: Day): PictureDays {
  const days = [
    today,
    day(plan.showDay),
    ...plan.steps.flatMap(({ window, doneOn }) => [
      day(window.from),
      ...(doneOn === null ? [] : [day(doneOn)]),
    ]),
    ...bloomDays.flatMap((one, at) => (at === 0 || at === bloomDays.length - 1 ? [day(one.day)] : [])),
  ].sort();
  return { from: addDays(days[0] as Day, -5), to: addDays(days.at(-1) as Day, 5) };
}

/** Where a day stands across a picture that is `width` wide. */
export function acrossOf({ from, to }: PictureDays, width: number): (at: string) => number {
  const px = width / Math.max(1, daysBetween(from, to));
  return (at) => daysBetween(from, day(at)) * px;
}

/** The firsts of months in the picture, every `stride`th month so that labels keep `leastPx` between them. */
export function monthTicks(days: PictureDays, width: number, leastPx: number): Day[] {
  const firsts: Day[] = [];
  let [year, month] = days.from.split('-').map(Number) as [number, number];
  for (;;) {
    const first = day(`${year}-${String(month).padStart(2, '0')}-01`);
    if (first > days.to) break;
    if (first >= days.from) firsts.push(first);
    [year, month] = month === 12 ? [year + 1, 1] : [year, month + 1];
  }
  const monthPx = (width / Math.max(1, daysBetween(days.from, days.to))) * 30;
  const stride = Math.max(1, Math.ceil(leastPx / monthPx));
  return firsts.filter((_, at) => at % stride === 0);
}

/** The chance on one day; 0 outside the days given, where it is under one in a hundred. */
export function chanceOn(bloomDays: BloomDays, on: string): number {
  return bloomDays.find((one) => one.day === on)?.chance ?? 0;
}

/** The hill of the chance as a path over the ground line. */
export function hillPath(bloomDays: BloomDays, across: (at: string) => number): string {
  const [first, last] = [bloomDays[0], bloomDays.at(-1)];
  if (!first || !last) return '';
  const points = bloomDays.map(
    (one) => `${across(one.day).toFixed(1)} ${(GROUND - one.chance * HILL).toFixed(1)}`,
  );
  return `M${across(first.day).toFixed(1)} ${GROUND}L${points.join('L')}L${across(last.day).toFixed(1)} ${GROUND}Z`;
}

/** Middle of a text on its place, unless it would run over an edge of the picture. */
export function anchored(x: number, width: number, room = 24): { textAnchor: 'start' | 'middle' | 'end' } {
  if (x < room) return { textAnchor: 'start' };
  return { textAnchor: x > width - room ? 'end' : 'middle' };
}
