import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import { isComparable } from '../photo/comparable.ts';

/** One photo among all of a plant's, with the sitting it belongs to. */
export interface Leaf {
  readonly sitting: Sitting;
  readonly view: View;
}

/** All photos newest sitting first; within a sitting in the order taken. */
export function leavesOf(sittings: readonly Sitting[]): Leaf[] {
  return sittings.flatMap((sitting) => sitting.views.map((view) => ({ sitting, view })));
}

/** The chosen photo, or the newest one when none is chosen or the chosen one has gone. */
export function chosenLeaf(leaves: readonly Leaf[], viewId: string | null): Leaf | null {
  return leaves.find(({ view }) => view.id === viewId) ?? leaves[0] ?? null;
}

/** The neighbour `step` photos older (positive) or newer (negative); stays at the ends. */
export function neighbour(leaves: readonly Leaf[], current: Leaf, step: number): Leaf {
  const at = leaves.findIndex(({ view }) => view.id === current.view.id);
  return leaves[Math.min(Math.max(at + step, 0), leaves.length - 1)] ?? current;
}

/**
 * The last measured photo of an earlier sitting that was taken at the same turn: what "since the last
 * sitting" compares with.
 */
export function measuredBefore(sittings: readonly Sitting[], current: Leaf): Leaf | null {
  if (!isComparable(current.view)) return null;
  const earlier = sittings
    .filter(({ day }) => day < current.sitting.day)
    .sort((a, b) => (a.day < b.day ? 1 : -1));
  for (const sitting of earlier) {
    const view = sitting.views.find(
      (earlierView) =>
        earlierView.report?.status === 'measured' &&
        isComparable(earlierView) &&
        (earlierView.turnDeg ?? 0) === (current.view.turnDeg ?? 0),
    );
    if (view) return { sitting, view };
  }
  return null;
}

/** "mark to the camera", "turned 90°"; null when the turn was not told. */
export function turnWords(turnDeg: number | null): string | null {
  if (turnDeg === null) return null;
  return turnDeg === 0 ? 'mark to the camera' : `turned ${turnDeg}°`;
}
