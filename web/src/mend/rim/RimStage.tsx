import { type PointerEvent, type ReactNode, useRef, useState } from 'react';
import type { RimByHand } from '../../../../core/stand/rim-by-hand.ts';
import type { View } from '../../../../server/schemas/sitting.ts';
import { outlinePath, type Point } from '../../photo/points.ts';
import { Loupe } from '../Loupe.tsx';
import { photoPointAt, type StageSize, unitOf } from '../photo-window.ts';
import type { PhotoWindow } from '../use-photo-window.ts';
import styles from './RimStage.module.css';
import { HANDLE_WORDS, handlePlace, RIM_HANDLES, type RimHandle } from './rim-handles.ts';

/** The photo with the rim's three handles. A finger or mouse drags them, arrow keys move the one in focus. */
export function RimStage({
  view,
  rim,
  window,
  stage,
  keysId,
  onMove,
  onRest,
}: {
  view: View;
  rim: RimByHand;
  window: PhotoWindow;
  stage: StageSize;
  /** The element that explains the keys. */
  keysId: string;
  /** A handle is moved to a place in the photo. */
  onMove: (handle: RimHandle, to: Point) => void;
  /** The handle was let go. */
  onRest: () => void;
}) {
  const svg = useRef<SVGSVGElement>(null);
  const [held, setHeld] = useState<{ handle: RimHandle; byTouch: boolean; offset: Point } | null>(null);
  const unitPx = unitOf(window.box, stage);
  const { x, y, width, height } = window.box;

  const placeOf = (event: PointerEvent): Point => {
    const edge = (svg.current as SVGSVGElement).getBoundingClientRect();
    return photoPointAt([event.clientX - edge.left, event.clientY - edge.top], window.box, stage);
  };
  const take = (handle: RimHandle) => (event: PointerEvent<SVGGElement>) => {
    event.currentTarget.setPointerCapture(event.pointerId);
    const [at, place] = [placeOf(event), handlePlace(rim, handle)];
    // Where the finger took hold beside the middle, it stays beside it.
    setHeld({ handle, byTouch: event.pointerType === 'touch', offset: [place[0] - at[0], place[1] - at[1]] });
  };
  const drag = (event: PointerEvent) => {
    if (!held) return;
    const [across, down] = placeOf(event);
    onMove(held.handle, [across + held.offset[0], down + held.offset[1]]);
  };
  const letGo = () => {
    if (held) onRest();
    setHeld(null);
  };

  const drawing: ReactNode = (
    <>
      <image
        href={`${view.pictureUrl}?width=1600`}
        width={view.widthPx}
        height={view.heightPx}
        preserveAspectRatio="none"
      />
      <path d={outlinePath(view.outlinePx)} className={styles.outline} />
      <RimLines rim={rim} top={y} />
    </>
  );
  const heldAt = held && handlePlace(rim, held.handle);
  return (
    <div className={styles.stage}>
      <svg
        ref={svg}
        className={styles.photo}
        viewBox={`${x} ${y} ${width} ${height}`}
        preserveAspectRatio="none"
        aria-label="The photo with the pot’s rim"
      >
        {drawing}
        {RIM_HANDLES.map((handle) => {
          const [across, down] = handlePlace(rim, handle);
          return (
            // biome-ignore lint/a11y/useSemanticElements: no button element can stand in a drawing
            <g
              key={handle}
              role="button"
              tabIndex={0}
              aria-label={HANDLE_WORDS[handle]}
              aria-describedby={keysId}
              className={styles.handle}
              data-handle={handle}
              transform={`translate(${across} ${down}) scale(${unitPx})`}
              onPointerDown={take(handle)}
              onPointerMove={drag}
              onPointerUp={letGo}
              onPointerCancel={letGo}
              onKeyDown={(event) => {
                const step = STEPS[event.key];
                if (!step) return;
                event.preventDefault();
                event.stopPropagation();
                const by = unitPx * (event.shiftKey ? 10 : 1);
                onMove(handle, [across + step[0] * by, down + step[1] * by]);
                onRest();
              }}
            >
              <circle r="26" className={styles.reach} />
              <circle r="13" className={styles.casing} />
              <circle r="13" className={styles.ring} />
              <path d="M-5 0h10M0 -5v10" className={styles.cross} />
            </g>
          );
        })}
      </svg>
      {held?.byTouch && heldAt && (
        <Loupe at={heldAt} isLeft={heldAt[0] < x + width / 2} unitPx={unitPx}>
          {drawing}
          <path
            d={`M${heldAt[0] - 8 * unitPx} ${heldAt[1]}h${16 * unitPx}M${heldAt[0]} ${heldAt[1] - 8 * unitPx}v${16 * unitPx}`}
            className={styles.cross}
          />
        </Loupe>
      )}
    </div>
  );
}

const STEPS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Rim and axis as dashed lines on a dark casing. */
function RimLines({ rim, top }: { rim: RimByHand; top: number }) {
  const [across, down] = handlePlace(rim, 'axis');
  const lines = `M${rim.leftPx.join(' ')}L${rim.rightPx.join(' ')}M${across} ${down}V${top}`;
  return (
    <>
      <path d={lines} className={styles.lineCasing} />
      <path d={lines} className={styles.line} />
    </>
  );
}
