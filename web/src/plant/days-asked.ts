import { addDays, day } from '../../../core/day/day.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Days } from '../api/sittings.ts';
import { type Leaf, measuredBefore } from './leafing.ts';
import { onDay } from './use-page-with.ts';

/** The days of older sittings that the numbers of a photo are held against: of the same side, before it, and before the last stop. */
export function daysHeldAgainst(page: PlantPage, leaf: Leaf): Days[] {
  const newest = page.sittings
    .flatMap(({ views }) => views)
    .find(({ report }) => report?.status === 'measured');
  const stop = lastStop(page);
  return [
    measuredBefore(page.sittings, leaf) === null
      ? earlierOfSide(page, leaf.view.turnDeg, leaf.sitting.day)
      : null,
    stop === null || newest === undefined || page.sittings.some((sitting) => sitting.day <= stop)
      ? null
      : // A photo of the day itself shows the plant before the knife.
        earlierOfSide(page, newest.turnDeg, addDays(day(stop), 1)),
  ].flatMap((one) => (one === null ? [] : [onDay(one)]));
}

/** The day of the newest measured photo of that side before a day, among the sittings known in a line; `null` when there is none. */
export function earlierOfSide({ earlier }: PlantPage, turnDeg: number | null, before: string): string | null {
  const found = earlier.find(
    ({ day, views }) =>
      day < before &&
      views.some(
        (view) =>
          view.isMeasured && view.isOfItsPlace && !view.afterWork && (view.turnDeg ?? 0) === (turnDeg ?? 0),
      ),
  );
  return found?.day ?? null;
}

/** The days of older sittings that have one of these photos. */
export function daysOfViews({ earlier }: PlantPage, viewIds: readonly string[]): Days[] {
  return earlier
    .filter(({ views }) => views.some(({ id }) => viewIds.includes(id)))
    .map((sitting) => onDay(sitting.day));
}

/** The last stop up to the newest sitting; `null` without one. */
function lastStop({ stops, sittings }: PlantPage): string | null {
  const newest = sittings[0]?.day ?? '';
  return (
    stops
      .map(({ day }) => day)
      .filter((day) => day <= newest)
      .sort()
      .at(-1) ?? null
  );
}
