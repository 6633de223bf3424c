import { useMemo, useState } from 'react';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import type { UnsureZone } from '../photo/outline-words.ts';
import type { Point } from '../photo/points.ts';
import { zoneWords } from './mend-words.ts';
import { roomiestPlace } from './zone-dabs.ts';
import { openZones, zoneAfter } from './zone-steps.ts';

/** Steps through the unsure zones that no stroke has answered yet. */
export function useZoneSteps(view: View, strokes: readonly Stroke[]) {
  const { unsure } = view.drawing;
  const zones = useMemo(() => openZones(unsure, strokes), [unsure, strokes]);
  const [at, setAt] = useState(0);
  const index = Math.min(at, Math.max(zones.length - 1, 0));
  return {
    asked: zones[index] ?? null,
    index,
    count: zones.length,
    /** Goes on to the next zone; `null` when none is open. */
    step(): { words: string; middle: Point } | null {
      const next = zoneAfter(zones.length, index);
      const zone: UnsureZone | undefined = zones[next];
      if (!zone) return null;
      setAt(next);
      const middle = roomiestPlace(zone.outlinePx)?.at ?? zone.outlinePx[0];
      return middle ? { words: `${zoneWords(zone, next, zones.length)} Is this leaf?`, middle } : null;
    },
  };
}
