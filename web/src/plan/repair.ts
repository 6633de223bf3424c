import type { TurnedFault } from '../../../core/turned/fault-words.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { degreeWords } from '../words/turn-words.ts';

/** A change of a view's turn. */
export interface TurnChange {
  readonly viewId: string;
  readonly turnDeg: number | null;
}

/** What puts a fault right in one tap. */
export interface Repair {
  /** On the button. */
  readonly words: string;
  /** In the bar that offers to take it back. */
  readonly done: string;
  readonly changes: readonly TurnChange[];
}

/**
 * The known repair of a fault.
 *
 * @param views in the order in which the fault counts them
 * @returns `null` where only the grower's eye or another photo helps
 */
export function repairOf(fault: TurnedFault, views: readonly View[]): Repair | null {
  const view = views[fault.view];
  if (view === undefined) return null;
  switch (fault.kind) {
    case 'turn-wrong': {
      if (fault.fitsTurnDeg === null) return null;
      const turnDeg = Math.round(fault.fitsTurnDeg) % 360;
      return {
        words: `Set view ${fault.view + 1} to ${degreeWords(turnDeg)}`,
        done: `View ${fault.view + 1} counts as turned ${degreeWords(turnDeg)}.`,
        changes: [{ viewId: view.id, turnDeg }],
      };
    }
    case 'views-swapped': {
      const other = fault.otherView === null ? undefined : views[fault.otherView];
      if (other === undefined || fault.otherView === null) return null;
      return {
        words: `Swap the turns of views ${fault.view + 1} and ${fault.otherView + 1}`,
        done: `The turns of views ${fault.view + 1} and ${fault.otherView + 1} are swapped.`,
        changes: [
          { viewId: view.id, turnDeg: other.turnDeg },
          { viewId: other.id, turnDeg: view.turnDeg },
        ],
      };
    }
    case 'pot-moved':
      return null;
  }
}
