import { type KeyboardEvent, type PointerEvent, useCallback, useId, useMemo, useRef, useState } from 'react';
import { radOf } from '../../../core/turned/circular-statistics.ts';
import type { HullSolid } from '../../../server/schemas/turned.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { useWidth } from '../photo/use-width.ts';
import { HullMarks, type HullMarksProps } from './HullMarks.tsx';
import styles from './HullStage.module.css';
import { hasWebGL } from './has-webgl.ts';
import { lookWords } from './hull-words.ts';
import { SolidCanvas, StillCanvas } from './SolidCanvas.tsx';
import { solidScene } from './solid-scene.ts';
import { Turntable } from './Turntable.tsx';
import { type Direction, FIRST_LOOK, FROM_ABOVE_DEG, turnedBy } from './turning.ts';
import { useTurning } from './use-turning.ts';

/** A drag across the whole stage turns by this much, degrees. */
const DRAG_DEG = 200;
const KEY_DEG = 15;
/** The lamp stands this high; where the light's side is not known it stands at the eye's left. */
const LAMP_UP_DEG = 40;

/** The hull as a solid to turn: by finger, mouse, keys or buttons. */
export default function HullStage({
  solid,
  ball,
  lightAzimuthDeg,
  heard,
}: {
  solid: HullSolid;
  ball: HullMarksProps['ball'];
  lightAzimuthDeg: number | null;
  /** The solid in words. */
  heard: string;
}) {
  const stage = useRef<HTMLDivElement>(null);
  const width = useWidth(stage);
  const heardId = useId();
  const scene = useMemo(() => solidScene(solid), [solid]);
  const { turning, set, goTo } = useTurning();
  const [still, setStill] = useState(() => !hasWebGL());
  const toStill = useCallback(() => setStill(true), []);
  const held = useRef<{ x: number; y: number } | null>(null);
  const lamp = useMemo(
    () => lampAt(lightAzimuthDeg ?? turning.turnDeg - 50),
    [lightAzimuthDeg, turning.turnDeg],
  );

  function drag(event: PointerEvent) {
    if (!held.current || width === 0) return;
    const { clientX: x, clientY: y } = event;
    const perPx = DRAG_DEG / width;
    // A finger that moves to the right takes the front of the plant with it.
    set(turnedBy(turning, -(x - held.current.x) * perPx, (y - held.current.y) * perPx));
    held.current = { x, y };
  }
  function key(event: KeyboardEvent) {
    const [by, up] = KEYS[event.key] ?? [];
    if (event.key === 'Home') goTo(FIRST_LOOK);
    else if (by !== undefined && up !== undefined) set(turnedBy(turning, by * KEY_DEG, up * KEY_DEG));
    else return;
    event.preventDefault();
  }

  const drawn = { scene, turning, lamp, width };
  const marks = { solid, scene, turning, ball, lightAzimuthDeg, width };
  return (
    <div className={styles.whole}>
      <div
        ref={stage}
        className={styles.stage}
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: an application takes keys
        tabIndex={0}
        aria-label="The plant as a solid. Arrow keys turn it."
        aria-describedby={heardId}
        onKeyDown={key}
        onPointerDown={(event) => {
          held.current = { x: event.clientX, y: event.clientY };
          event.currentTarget.setPointerCapture(event.pointerId);
        }}
        onPointerMove={drag}
        onPointerUp={() => {
          held.current = null;
        }}
        onPointerCancel={() => {
          held.current = null;
        }}
      >
        {width > 0 && (
          <>
            <Turntable {...marks} />
            {still ? <StillCanvas {...drawn} /> : <SolidCanvas {...drawn} onNone={toStill} />}
            <HullMarks {...marks} />
          </>
        )}
      </div>
      <p id={heardId} className="only-heard">
        {heard}
      </p>
      <p className={styles.look} aria-live="polite">
        {lookWords(turning)}
        {still && ' This browser lends no WebGL, so it is a picture, painted anew at each step.'}
      </p>
      <div className={buttons.row}>
        <button type="button" className={buttons.quiet} onClick={() => goTo(turnedBy(turning, -45, 0))}>
          <Icon name="back" /> Turn left
        </button>
        <button type="button" className={buttons.quiet} onClick={() => goTo(turnedBy(turning, 45, 0))}>
          Turn right <Icon name="onward" />
        </button>
        <button
          type="button"
          className={buttons.quiet}
          onClick={() => goTo({ turnDeg: 0, tiltDeg: FROM_ABOVE_DEG })}
        >
          From above
        </button>
        <button type="button" className={buttons.quiet} onClick={() => goTo(FIRST_LOOK)}>
          Mark to the front
        </button>
      </div>
    </div>
  );
}

/** Which way each key turns: round, and up. */
const KEYS: Readonly<Record<string, readonly [by: number, up: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

function lampAt(azimuthDeg: number): Direction {
  const [azimuth, up] = [radOf(azimuthDeg), radOf(LAMP_UP_DEG)];
  return [Math.cos(up) * Math.cos(azimuth), Math.cos(up) * Math.sin(azimuth), Math.sin(up)];
}
