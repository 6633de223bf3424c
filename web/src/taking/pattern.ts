import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import type { Leaf } from '../plant/leafing.ts';
import { onDay, usePageWith } from '../plant/use-page-with.ts';

/** Nearer than this an earlier view serves as a pattern, degrees. */
const SAME_TURN_DEG = 6;

/** The newest view of another sitting taken at about this turn: what the next shot should look like. */
export function usePattern(page: PlantPage, current: Sitting | null, turnDeg: number): Leaf | null {
  const older =
    patternOfTurn(page.sittings, current, turnDeg) === null
      ? page.earlier.find(({ views }) => views.some((view) => isAbout(view.turnDeg, turnDeg)))
      : undefined;
  const { page: whole } = usePageWith(page, older ? [onDay(older.day)] : []);
  return patternOfTurn(whole.sittings, current, turnDeg);
}

function patternOfTurn(sittings: readonly Sitting[], current: Sitting | null, turnDeg: number): Leaf | null {
  for (const sitting of sittings) {
    if (sitting.id === current?.id) continue;
    const view = sitting.views.find((one) => isAbout(one.turnDeg, turnDeg));
    if (view) return { sitting, view };
  }
  return null;
}

function isAbout(turnDeg: number | null, wantedDeg: number): boolean {
  return turnDeg !== null && Math.abs(turnBetween(turnDeg, wantedDeg)) <= SAME_TURN_DEG;
}
