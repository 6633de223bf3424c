import { type ReactNode, useEffect, useId } from 'react';
import type { Box } from '../photo/points.ts';
import { BrushRing, Crosshair } from './BrushMark.tsx';
import { Loupe } from './Loupe.tsx';
import { MendPicture } from './MendPicture.tsx';
import styles from './MendStage.module.css';
import { type StageSize, unitOf } from './photo-window.ts';
import { StrokeBand } from './StrokeDrawing.tsx';
import type { MendDesk } from './use-mend-desk.ts';
import type { PhotoWindow } from './use-photo-window.ts';

/** The photo to paint on. Pointers paint, keys move the crosshair. */
export function MendStage({
  desk,
  photo,
  stage,
  keysId,
  onPlace,
}: {
  desk: MendDesk;
  /** The stage's own element and size, once it stands. */
  photo: HTMLDivElement | null;
  stage: StageSize | null;
  /** The element that explains the keys. */
  keysId: string;
  onPlace: (photo: HTMLDivElement | null) => void;
}) {
  const id = useId();
  const { mending, window, brush, widthPx, cross } = desk;
  const { live, hover, handlers } = desk.painting;
  const { box } = window;
  const unitPx = stage ? unitOf(box, stage) : 1;
  useWheel(photo, window, unitPx);
  const tip = live?.pointsPx.at(-1) ?? null;
  const ringAt = brush === 'move' ? null : (tip ?? hover ?? cross);
  const picture = (pictureId: string): ReactNode => (
    <>
      <MendPicture
        id={pictureId}
        view={mending.view}
        strokes={mending.history.strokes}
        heard={mending.heard}
        asked={desk.zones.asked}
        unitPx={unitPx}
      />
      {live && brush !== 'move' && <StrokeBand stroke={{ kind: brush, widthPx, pointsPx: live.pointsPx }} />}
      {ringAt && <BrushRing at={ringAt} widthPx={widthPx} />}
    </>
  );
  return (
    <div
      ref={onPlace}
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
          {picture(id)}
          {cross && <Crosshair at={cross} unitPx={unitPx} />}
        </svg>
      )}
      {live?.by === 'touch' && tip && (
        <Loupe at={tip} isLeft={tip[0] < box.x + box.width / 2} unitPx={unitPx}>
          {picture(`${id}-loupe`)}
        </Loupe>
      )}
    </div>
  );
}

function boxWords({ x, y, width, height }: Box): string {
  return `${x} ${y} ${width} ${height}`;
}

/** The wheel looks closer about the mouse. React's own wheel listener may not hold the page still. */
function useWheel(photo: HTMLDivElement | null, window: PhotoWindow, unitPx: number): void {
  useEffect(() => {
    if (!photo) return;
    const turn = (event: WheelEvent) => {
      event.preventDefault();
      const edge = photo.getBoundingClientRect();
      window.zoom(Math.exp(-event.deltaY / 500), [
        window.box.x + (event.clientX - edge.left) * unitPx,
        window.box.y + (event.clientY - edge.top) * unitPx,
      ]);
    };
    photo.addEventListener('wheel', turn, { passive: false });
    return () => photo.removeEventListener('wheel', turn);
  });
}
