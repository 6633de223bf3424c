import { boundsOf } from '../../core/raster/bounds.ts';
import type { BenchView } from '../schemas/pages.ts';
import type { View } from '../schemas/sitting.ts';

/** A view as the bench gets it: of its outline only how far it reaches. */
export function benchView({ outlinePx, drawing: _, ...view }: View): BenchView {
  return { ...view, outlineCornersPx: cornersOf(outlinePx) };
}

function cornersOf(outlinePx: View['outlinePx']): BenchView['outlineCornersPx'] {
  const bounds = boundsOf(outlinePx);
  if (bounds === null) return [];
  return [
    [bounds.left, bounds.top],
    [bounds.right, bounds.bottom],
  ];
}
