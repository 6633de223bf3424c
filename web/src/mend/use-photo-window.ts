import { useState } from 'react';
import type { Box, Point } from '../photo/points.ts';
import { panned, pinched, type StageSize, showing, windowAround, zoomed } from './photo-window.ts';

export interface PhotoWindow {
  readonly box: Box;
  zoom(factor: number, about?: Point): void;
  move(by: Point): void;
  pinch(from: readonly [Point, Point], to: readonly [Point, Point]): void;
  /** Brings a point into sight, `roomShare` of the window from its edge. */
  show(point: Point, roomShare: number): void;
  showAll(): void;
}

/** The part of the photo in sight. It begins at `first` and keeps its middle and scale when the stage changes. */
export function usePhotoWindow(photo: Box, first: Box, stage: StageSize): PhotoWindow {
  const [kept, setKept] = useState<Box | null>(null);
  const box = windowAround(kept ?? first, stage);
  const change = (next: (box: Box) => Box) => setKept((now) => next(windowAround(now ?? first, stage)));
  const middle = (now: Box): Point => [now.x + now.width / 2, now.y + now.height / 2];
  return {
    box,
    zoom: (factor, about) => change((now) => zoomed(now, factor, about ?? middle(now), photo, stage)),
    move: (by) => change((now) => panned(now, by, photo, stage)),
    pinch: (from, to) => change((now) => pinched(now, from, to, photo, stage)),
    show: (point, roomShare) => change((now) => showing(now, point, photo, roomShare)),
    showAll: () => setKept(windowAround(photo, stage)),
  };
}
