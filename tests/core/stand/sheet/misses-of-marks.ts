import type { RingMark } from '../../../../core/stand/sheet/ring-mark.ts';
import type { SheetPhoto } from './photographed-sheet.ts';

/** How far each found mark lies from a true one of its kind, px, and how many lie at none. */
export function missesOfMarks(
  { geometry, centreOf }: SheetPhoto,
  found: readonly RingMark[],
): { readonly misses: number[]; readonly strays: number } {
  const misses: number[] = [];
  for (const { kind, centrePx, radiusPx } of found) {
    const alike = geometry.marks.filter((mark) => mark.kind === kind).map(({ id }) => centreOf(id));
    const nearest = Math.min(...alike.map(([x, y]) => Math.hypot(centrePx[0] - x, centrePx[1] - y)));
    if (nearest < radiusPx / 2) misses.push(nearest);
  }
  return { misses, strays: found.length - misses.length };
}
