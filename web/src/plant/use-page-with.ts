import { useQueries } from '@tanstack/react-query';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { type Days, sittingsQuery } from '../api/sittings.ts';

/** A page to which older sittings were added. */
export interface PageWith<Page extends PlantPage | undefined> {
  readonly page: Page;
  /** What was asked for is still to come. */
  readonly isPending: boolean;
  readonly fault: Error | null;
}

/** A plant's page with the sittings of these days whole, those that are known in a line each so far. */
export function usePageWith<Page extends PlantPage | undefined>(
  page: Page,
  wanted: readonly Days[],
): PageWith<Page> {
  const lacking =
    page === undefined ? [] : wanted.filter((days) => page.earlier.some(({ day }) => isIn(day, days)));
  const answers = useQueries({
    queries: lacking.map((days) => sittingsQuery(page?.plant.id ?? '', days)),
  });
  const sittings = answers.flatMap(({ data }) => data ?? []);
  return {
    page: (page === undefined || sittings.length === 0 ? page : pageWith(page, sittings)) as Page,
    isPending: answers.some((answer) => answer.isPending),
    fault: answers.find(({ error }) => error !== null)?.error ?? null,
  };
}

/** Sittings in the place of their lines. */
export function pageWith(page: PlantPage, sittings: readonly Sitting[]): PlantPage {
  const added = new Map(sittings.map((sitting) => [sitting.id, sitting]));
  for (const { id } of page.sittings) added.delete(id);
  return {
    ...page,
    sittings: [...page.sittings, ...added.values()].sort((one, other) => (one.day < other.day ? 1 : -1)),
    earlier: page.earlier.filter(({ id }) => !added.has(id)),
  };
}

/** One day as a stretch of days. */
export function onDay(day: string): Days {
  return { from: day, to: day };
}

function isIn(day: string, { from, to }: Days): boolean {
  return day >= from && day <= to;
}
