import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import type { Leaf } from '../plant/leafing.ts';

/** Nearer than this an earlier view serves as a pattern, degrees. */
const SAME_TURN_DEG = 6;

/** The newest view of another sitting taken at about this turn: what the next shot should look like. */
export function patternOfTurn(
  sittings: readonly Sitting[],
  current: Sitting | null,
  turnDeg: number,
): Leaf | null {
  for (const sitting of sittings) {
    if (sitting.id === current?.id) continue;
    const view = sitting.views.find(
      (one) => one.turnDeg !== null && Math.abs(turnBetween(one.turnDeg, turnDeg)) <= SAME_TURN_DEG,
    );
    if (view) return { sitting, view };
  }
  return null;
}
