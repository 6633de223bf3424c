import type { Advice } from './advice.ts';
import { clearLeaf } from './clear-leaf.ts';
import { keepAsIs } from './keep-as-is.ts';
import { photograph } from './photograph.ts';
import { planStops } from './plan-stops.ts';
import type { PlantHistory } from './plant-history.ts';
import { shortenStems } from './shorten-stems.ts';
import { turnToLight } from './turn-to-light.ts';
import { waitAfterStop } from './wait-after-stop.ts';

/**
 * All advice for one plant, the most urgent first.
 *
 * @param history reports by sitting (oldest first), stops, kind, show day and the grower's today
 * @returns one piece of advice a rule at most
 *
 * Notes: pure: the same history gives the same advice. No advice rests on a change inside the plus-minus.
 *
 * Example: an even plant photographed today, with no show set, gets "Keep on as you do."
 */
export function adviseFromSittings(history: PlantHistory): Advice[] {
  const found = [
    photograph(history),
    waitAfterStop(history),
    turnToLight(history),
    shortenStems(history),
    planStops(history),
    clearLeaf(history),
  ].filter((advice) => advice !== null);
  // Stops planned for later, and a weak side that faces the light already, are no reason against keeping on as before.
  const hasWork = found.some(
    ({ kind, urgency }) => (kind !== 'plan' || urgency > 1) && (kind !== 'turn' || urgency > 0),
  );
  const keep = hasWork ? null : keepAsIs(history);
  return [...found, ...(keep === null ? [] : [keep])].sort((a, b) => b.urgency - a.urgency);
}
