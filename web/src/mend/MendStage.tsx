import { type ReactNode, type RefObject, useEffect, useId } from 'react';
import type { Stroke } from '../../../core/canopy/stroke.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import type { UnsureZone } from '../photo/outline-words.ts';
import type { Box, Point } from '../photo/points.ts';
import { BrushRing, Crosshair } from './BrushMark.tsx';
import { Loupe } from './Loupe.tsx';
import { MendPicture } from './MendPicture.tsx';
import styles from './MendStage.module.css';
import type { Brush } from './mend-words.ts';
import { type StageSize, unitOf } from './photo-window.ts';
import { StrokeBand } from './StrokeDrawing.tsx';
import type { LiveStroke, usePainting } from './use-painting.ts';
import type { PhotoWindow } from './use-photo-window.ts';

/** The photo to paint on. Pointers paint, keys move the crosshair. */
export function MendStage({
  place,
  view,
  stage,
  window,
  brush,
  widthPx,
  strokes,
  heard,
  asked,
  cross,
  painting,
  keysId,
}: {
  place: RefObject<HTMLDivElement | null>;
  view: View;
  stage: StageSize | null;
  window: PhotoWindow;
  brush: Brush;
  widthPx: number;
  strokes: readonly Stroke[];
  heard: readonly Stroke[];
  asked: UnsureZone | null;
  /** Place of the keys' crosshair; `null` until a key moves it. */
  cross: Point | null;
  painting: ReturnType<typeof usePainting>;
  /** The element that explains the keys. */
  keysId: string;
}) {
  const id = useId();
  const { box } = window;
  const { live, hover, handlers } = painting;
  const unitPx = stage ? unitOf(box, stage) : 1;
  useWheel(place, window, unitPx);
  const liveStroke = live && brush !== 'move' ? strokeOf(live, brush, widthPx) : null;
  const tip = live?.pointsPx.at(-1) ?? null;
  const ringAt = brush === 'move' ? null : (tip ?? hover ?? cross);
  const picture = (pictureId: string, unitPx: number): ReactNode => (
    <>
      <MendPicture id={pictureId} view={view} strokes={strokes} heard={heard} asked={asked} unitPx={unitPx} />
      {liveStroke && <StrokeBand stroke={liveStroke} />}
      {ringAt && <BrushRing at={ringAt} widthPx={widthPx} />}
    </>
  );
  return (
    <div
      ref={place}
      className={styles.stage}
      role="application"
      aria-label="The photo. Arrow keys move the crosshair, space begins and ends a stroke."
      aria-describedby={keysId}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the keys of the crosshair speak to the photo
      tabIndex={0}
      data-brush={brush}
      onContextMenu={(event) => event.preventDefault()}
      {...handlers}
    >
      {stage && (
        <svg className={styles.photo} viewBox={boxWords(box)} preserveAspectRatio="none" aria-hidden="true">
          {picture(id, unitPx)}
          {cross && <Crosshair at={cross} unitPx={unitPx} />}
        </svg>
      )}
      {live?.by === 'touch' && tip && (
        <Loupe at={tip} window={box}>
          {picture(`${id}-loupe`, unitPx)}
        </Loupe>
      )}
    </div>
  );
}

function strokeOf({ pointsPx }: LiveStroke, kind: Stroke['kind'], widthPx: number): Stroke {
  return { kind, widthPx, pointsPx };
}

function boxWords({ x, y, width, height }: Box): string {
  return `${x} ${y} ${width} ${height}`;
}

/** The wheel looks closer about the mouse. React's own wheel listener may not hold the page still. */
function useWheel(place: RefObject<HTMLDivElement | null>, window: PhotoWindow, unitPx: number): void {
  useEffect(() => {
    const element = place.current;
    if (!element) return;
    const turn = (event: WheelEvent) => {
      event.preventDefault();
      const edge = element.getBoundingClientRect();
      window.zoom(Math.exp(-event.deltaY / 500), [
        window.box.x + (event.clientX - edge.left) * unitPx,
        window.box.y + (event.clientY - edge.top) * unitPx,
      ]);
    };
    element.addEventListener('wheel', turn, { passive: false });
    return () => element.removeEventListener('wheel', turn);
  });
}
