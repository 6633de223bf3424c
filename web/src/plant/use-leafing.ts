import { useEffect } from 'react';
import { type Leaf, neighbour } from './leafing.ts';

/** Leafs through the photos by arrow keys; returns the step for buttons and swipes (1 = older). */
export function useLeafing(
  leaves: readonly Leaf[],
  current: Leaf | null,
  choose: (viewId: string) => void,
  listening: boolean,
): (step: number) => void {
  const step = (by: number) => {
    if (current) choose(neighbour(leaves, current, by).view.id);
  };
  useEffect(() => {
    if (!listening) return;
    const hear = (event: KeyboardEvent) => {
      const inEntry =
        event.target instanceof Element &&
        event.target.closest('input, textarea, select, [role=radiogroup], [role=application], figure');
      if (inEntry || event.altKey || event.ctrlKey || event.metaKey) return;
      // The strip runs from the newest at the left to the oldest at the right.
      if (event.key === 'ArrowLeft') step(-1);
      if (event.key === 'ArrowRight') step(1);
    };
    window.addEventListener('keydown', hear);
    return () => window.removeEventListener('keydown', hear);
  });
  return step;
}
