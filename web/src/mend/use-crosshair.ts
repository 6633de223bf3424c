import { useState } from 'react';
import type { Box, Point } from '../photo/points.ts';
import { drawnOn } from './brush.ts';
import { intoPhoto } from './photo-window.ts';
import type { LiveStroke } from './use-painting.ts';
import type { PhotoWindow } from './use-photo-window.ts';

/** A step of the crosshair as a share of the window's width, and how much longer a far one is. */
const STEP_SHARE = 1 / 120;
const FAR = 10;

/** The crosshair that the keys move, and the stroke that it draws. */
export function useCrosshair({
  photo,
  window,
  widthPx,
  live,
  setLive,
  onStroke,
}: {
  photo: Box;
  window: PhotoWindow;
  widthPx: number;
  live: LiveStroke | null;
  setLive: (live: LiveStroke | null) => void;
  onStroke: (pointsPx: readonly Point[]) => void;
}) {
  const [cross, setCross] = useState<Point | null>(null);
  const { box } = window;
  const now: Point = cross ?? intoPhoto([box.x + box.width / 2, box.y + box.height / 2], photo);
  const ours = live?.by === 'keys' ? live : null;
  return {
    cross,
    /** Moves on and says where to. */
    step([across, down]: Point, far: boolean): Point {
      const stepPx = Math.max(box.width * STEP_SHARE, 1) * (far ? FAR : 1);
      const next = intoPhoto([now[0] + across * stepPx, now[1] + down * stepPx], photo);
      setCross(next);
      window.show(next, 0.15);
      if (ours) setLive({ ...ours, pointsPx: drawnOn(ours.pointsPx, next, widthPx) });
      return next;
    },
    /** Begins a stroke, or ends the one under way; true when it began. */
    press(): boolean {
      setCross(now);
      if (ours) {
        setLive(null);
        onStroke(drawnOn(ours.pointsPx, now, widthPx));
        return false;
      }
      setLive({ pointsPx: [now], by: 'keys' });
      return true;
    },
  };
}
