import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { UnsureZone } from '../photo/outline-words.ts';
import type { Point } from '../photo/points.ts';
import { isUnder } from './brush.ts';
import { roomiestPlace } from './zone-dabs.ts';

/** The zones no stroke has spoken about yet, in their order. A stroke speaks about a zone by its roomiest place. */
export function openZones(zones: readonly UnsureZone[], strokes: readonly Stroke[]): UnsureZone[] {
  return zones.filter(({ outlinePx }) => {
    const middle = middleOf(outlinePx);
    return middle !== null && !strokes.some((stroke) => isUnder(middle, stroke));
  });
}

/** Where "next" leads from the zone at `at`; round again from the last one. */
export function zoneAfter(count: number, at: number): number {
  return count === 0 ? 0 : (at + 1) % count;
}

/** Strokes come one by one over the same zones: each zone's middle is looked for once. */
const MIDDLES = new WeakMap<readonly Point[], Point | null>();

/** The roomiest place of a zone; `null` when it has none. */
export function middleOf(outlinePx: readonly Point[]): Point | null {
  const known = MIDDLES.get(outlinePx);
  if (known !== undefined) return known;
  const middle = roomiestPlace(outlinePx)?.at ?? null;
  MIDDLES.set(outlinePx, middle);
  return middle;
}
