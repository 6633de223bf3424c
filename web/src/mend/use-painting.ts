import { type PointerEvent, useRef, useState } from 'react';
import type { Box, Point } from '../photo/points.ts';
import { drawnOn } from './brush.ts';
import { intoPhoto, photoPointAt, type StageSize } from './photo-window.ts';
import { AT_REST, follow, type GestureAct, type PointerStep } from './pointer-gesture.ts';
import type { PhotoWindow } from './use-photo-window.ts';

/** The stroke under way. */
export interface LiveStroke {
  readonly pointsPx: readonly Point[];
  readonly by: PointerStep['kind'] | 'keys';
}

/** Turns pointers on the stage into strokes, and into moving and zooming the photo. */
export function usePainting({
  photo,
  stage,
  window,
  painting,
  widthPx,
  onStroke,
}: {
  photo: Box;
  stage: StageSize;
  window: PhotoWindow;
  painting: boolean;
  widthPx: number;
  onStroke: (pointsPx: readonly Point[]) => void;
}) {
  const [live, setLiveShown] = useState<LiveStroke | null>(null);
  const [hover, setHover] = useState<Point | null>(null);
  // Several pointer events may come before the screen is drawn anew: the stroke grows here.
  const drawn = useRef<LiveStroke | null>(null);
  const gesture = useRef(AT_REST);
  const setLive = (next: LiveStroke | null) => {
    drawn.current = next;
    setLiveShown(next);
  };

  function obey(act: GestureAct, by: PointerStep['kind']): void {
    if (act.what === 'begin') setLive({ pointsPx: [place(act.at)], by });
    if (act.what === 'abandon') setLive(null);
    if (act.what === 'move') window.move(act.by);
    if (act.what === 'pinch') window.pinch(act.from, act.to);
    if (act.what !== 'draw' && act.what !== 'finish') return;
    if (!drawn.current) return;
    const pointsPx = drawnOn(drawn.current.pointsPx, place(act.at), widthPx);
    if (act.what === 'draw') setLive({ by, pointsPx });
    else {
      setLive(null);
      onStroke(pointsPx);
    }
  }

  function place(at: Point): Point {
    return intoPhoto(photoPointAt(at, window.box, stage), photo);
  }

  function hear(what: PointerStep['what'], event: PointerEvent<HTMLElement>): void {
    const edge = event.currentTarget.getBoundingClientRect();
    const at: Point = [event.clientX - edge.left, event.clientY - edge.top];
    const kind = event.pointerType === 'pen' || event.pointerType === 'touch' ? event.pointerType : 'mouse';
    if (what === 'down' && event.button > 2) return;
    const step: PointerStep = {
      what,
      id: event.pointerId,
      kind,
      at,
      atMs: event.timeStamp,
      contactPx: kind === 'touch' ? Math.max(event.width, event.height) : 0,
      moves: kind === 'mouse' && event.button > 0,
    };
    const next = follow(gesture.current, step, painting);
    gesture.current = next.gesture;
    for (const act of next.acts) obey(act, kind);
    // A finger covers its place and leaves none behind; mouse and pen hover over theirs.
    setHover(kind === 'touch' && (what === 'up' || what === 'cancel') ? null : place(at));
  }

  return {
    live,
    hover,
    setLive,
    handlers: {
      onPointerDown: (event: PointerEvent<HTMLElement>) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        hear('down', event);
      },
      onPointerMove: (event: PointerEvent<HTMLElement>) => hear('move', event),
      onPointerUp: (event: PointerEvent<HTMLElement>) => hear('up', event),
      onPointerCancel: (event: PointerEvent<HTMLElement>) => hear('cancel', event),
      onPointerLeave: () => setHover(null),
    },
  };
}
