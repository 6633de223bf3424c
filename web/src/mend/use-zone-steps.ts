import { useEffect, useMemo, useRef, useState } from 'react';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import type { PhotoWindow } from './use-photo-window.ts';
import { middleOf, openZones, zoneAfter } from './zone-steps.ts';

/** A zone that is asked about stands at least this share of the window from its edge. */
const ROOM_SHARE = 0.35;

/** Steps through the unsure zones that no stroke has answered yet. Once stepping, each is brought into sight. */
export function useZoneSteps(view: View, strokes: readonly Stroke[], window: PhotoWindow) {
  const { unsure } = view.drawing;
  const zones = useMemo(() => openZones(unsure, strokes), [unsure, strokes]);
  const [at, setAt] = useState(0);
  const stepping = useRef(false);
  const index = Math.min(at, Math.max(zones.length - 1, 0));
  const asked = zones[index] ?? null;

  // biome-ignore lint/correctness/useExhaustiveDependencies: only another zone moves the window
  useEffect(() => {
    const middle = asked && middleOf(asked.outlinePx);
    if (stepping.current && middle) window.show(middle, ROOM_SHARE);
  }, [asked]);

  return {
    asked,
    index,
    count: zones.length,
    next(): void {
      stepping.current = true;
      setAt(zoneAfter(zones.length, index));
    },
    /** The answered zone leaves the list, and the next one takes its place. */
    leave(): void {
      stepping.current = true;
    },
    stay(): void {
      stepping.current = false;
    },
  };
}
