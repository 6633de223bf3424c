import type { BenchView } from '../schemas/pages.ts';
import type { View } from '../schemas/sitting.ts';

/** A view as the bench gets it: of its outline only how far it reaches. */
export function benchView({ outlinePx, drawing: _, ...view }: View): BenchView {
  return { ...view, outlineCornersPx: cornersOf(outlinePx) };
}

function cornersOf(outlinePx: View['outlinePx']): BenchView['outlineCornersPx'] {
  if (outlinePx.length === 0) return [];
  let [left, top, right, bottom] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of outlinePx) {
    left = Math.min(left, x);
    top = Math.min(top, y);
    right = Math.max(right, x);
    bottom = Math.max(bottom, y);
  }
  return [
    [left, top],
    [right, bottom],
  ];
}
