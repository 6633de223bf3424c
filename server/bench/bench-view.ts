import { boundsOf } from '../../core/raster/bounds.ts';
import type { BenchView } from '../schemas/pages.ts';
import type { View } from '../schemas/sitting.ts';

/** A view as the bench gets it: of its outline only how far it reaches, of its report what the bench draws and says. */
export function benchView({ outlinePx, drawing: _, report, ...view }: View): BenchView {
  return {
    ...view,
    report: report && { ...report, ...NOT_ON_BENCH },
    outlineCornersPx: cornersOf(outlinePx),
  };
}

const NOT_ON_BENCH = {
  extras: null,
  foliage: null,
  flower: null,
  gaps: null,
  stature: null,
  unsure: [],
} as const;

function cornersOf(outlinePx: View['outlinePx']): BenchView['outlineCornersPx'] {
  const bounds = boundsOf(outlinePx);
  if (bounds === null) return [];
  return [
    [bounds.left, bounds.top],
    [bounds.right, bounds.bottom],
  ];
}
