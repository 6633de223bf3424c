import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import type { View } from '../../../server/schemas/sitting.ts';

/** How many views a turned sitting may be planned with. */
export const VIEW_COUNTS = [1, 2, 4, 6, 8] as const;
export type ViewCount = (typeof VIEW_COUNTS)[number];

export const USUAL_COUNT: ViewCount = 4;

/** The best turns for so many views: evenly over half a turn, since opposite views show one outline and its mirror image. */
export function plannedTurns(count: ViewCount): number[] {
  return Array.from({ length: count }, (_, k) => (180 * k) / count);
}

/** One planned turn, and the view that fills it. */
export interface Slot {
  readonly turnDeg: number;
  readonly view: View | null;
}

export interface TurnPlan {
  readonly slots: readonly Slot[];
  /** Views at other turns, second ones at a planned turn, and those whose turn is not known. */
  readonly beside: readonly View[];
}

/** Nearer than this to a planned turn a view counts as taken there: half the step of eight views. */
const NEAR_DEG = 11;

/** Puts the views of a sitting to the planned turns; of several at one turn the nearest fills it. */
export function planOfViews(count: ViewCount, views: readonly View[]): TurnPlan {
  const slots = plannedTurns(count).map((turnDeg): Slot => {
    const off = (view: View) =>
      view.turnDeg === null ? Number.POSITIVE_INFINITY : Math.abs(turnBetween(turnDeg, view.turnDeg));
    const near = views.filter((view) => off(view) <= NEAR_DEG).sort((a, b) => off(a) - off(b));
    return { turnDeg, view: near[0] ?? null };
  });
  const filling = new Set(slots.flatMap(({ view }) => (view ? [view.id] : [])));
  return { slots, beside: views.filter(({ id }) => !filling.has(id)) };
}

/**
 * The first turn that neither has a view nor one on its way; `null` when all have.
 *
 * @param onTheirWay turns of photos not in the plan yet; `null` for one whose turn the collar will tell, which is taken to fill the next open turn
 */
export function nextTurnDeg({ slots }: TurnPlan, onTheirWay: readonly (number | null)[]): number | null {
  const told = onTheirWay.filter((deg) => deg !== null);
  const open = slots.filter(
    ({ turnDeg, view }) =>
      view === null && !told.some((deg) => Math.abs(turnBetween(turnDeg, deg)) <= NEAR_DEG),
  );
  return open[onTheirWay.length - told.length]?.turnDeg ?? null;
}

/** Views whose outlines are mirror twins of another in the list: taken from the opposite side. */
export function mirrorTwin(turnDeg: number, views: readonly View[]): View | null {
  return (
    views.find(
      (view) => view.turnDeg !== null && 180 - Math.abs(turnBetween(turnDeg, view.turnDeg)) <= NEAR_DEG,
    ) ?? null
  );
}

/**
 * Which turn each of several files is taken to have.
 *
 * @param firstDeg the turn asked for, which the first file gets
 * @returns the files in the order of their names (cameras count up), each with a turn; `null` once all planned turns are used up
 */
export function turnsForFiles<Named extends { readonly name: string }>(
  files: readonly Named[],
  plan: TurnPlan,
  { firstDeg, coming }: { firstDeg: number | null; coming: readonly (number | null)[] },
): { readonly ordered: Named[]; readonly turnsDeg: (number | null)[] } {
  const ordered = [...files].sort((a, b) => a.name.localeCompare(b.name, undefined, { numeric: true }));
  const turnsDeg: (number | null)[] = [];
  for (const _ of ordered) {
    const isFirst = turnsDeg.length === 0 && firstDeg !== null;
    turnsDeg.push(isFirst ? firstDeg : nextTurnDeg(plan, [...coming, ...turnsDeg]));
  }
  return { ordered, turnsDeg };
}
