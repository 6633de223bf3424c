import { type PointerEvent, type ReactNode, useId, useRef } from 'react';
import type { PlanReach, TurnedReport } from '../../../core/turned/measure-turned.ts';
import { useWidth } from '../photo/use-width.ts';
import { azimuthAt, placeAt, ringPath } from './azimuth.ts';
import { ClockFace } from './ClockFace.tsx';
import { HatchedSlice } from './HatchedSlice.tsx';
import { LeanArrow } from './LeanArrow.tsx';
import { LightRays } from './LightRays.tsx';
import styles from './PlanClock.module.css';
import { BALL, bandPath, planExtent, reachAt, reachPlaces } from './plan-shape.ts';
import { planHeard } from './plan-words.ts';
import { ReachLine } from './ReachLine.tsx';

/** Room for hours and light outside the farthest reach, CSS px. */
const ROOM_PX = 56;

/** The plan of a turned sitting, seen from above with the mark at 6 o'clock; a tap asks for the side under it. */
export function PlanClock({
  report,
  earlier,
  lightAzimuthDeg,
  askedDeg,
  onAsk,
  innerRoomPx = 0,
  printedPx,
  children,
}: {
  report: TurnedReport;
  /** Reach of an earlier sitting, in % of this sitting's ball. */
  earlier: readonly PlanReach[];
  /** Side of the plant that faces the light; `null` when not known. */
  lightAzimuthDeg: number | null;
  /** The side that is asked for; `null` for none. */
  askedDeg: number | null;
  onAsk: (azimuthDeg: number) => void;
  /** Room that `children` need between the farthest reach and the hours, CSS px. */
  innerRoomPx?: number;
  /** Its width in CSS px where it is printed only and so has none on the screen. */
  printedPx?: number;
  /** Draws on the plan, in % of the ball's radius; `unitPx` is how many of them are one CSS px. */
  children?: (unitPx: number) => ReactNode;
}) {
  const { reach, lopsidedness } = report.plan;
  const place = useRef<SVGSVGElement>(null);
  const shownPx = useWidth(place);
  const width = printedPx ?? shownPx;
  const id = useId();
  const farthest = planExtent(reach, earlier);
  // The room keeps its size on the screen, so the scale follows from the width.
  const unitPx = width > 0 ? farthest / Math.max(width / 2 - ROOM_PX - innerRoomPx, 40) : 1;
  const extent = farthest + innerRoomPx * unitPx;
  const half = extent + ROOM_PX * unitPx;
  const asked = askedDeg === null ? null : reachAt(reach, askedDeg);
  const ask = (event: PointerEvent) => {
    const box = place.current?.getBoundingClientRect();
    if (!box) return;
    onAsk(azimuthAt([event.clientX - box.x - box.width / 2, event.clientY - box.y - box.height / 2]));
  };
  return (
    <svg
      ref={place}
      className={styles.clock}
      viewBox={`${-half} ${-half} ${2 * half} ${2 * half}`}
      role="img"
      aria-label={planHeard(report)}
      onPointerDown={ask}
      data-testid="plan-clock"
    >
      <ClockFace extent={extent} unitPx={unitPx} />
      {report.turn && (
        <HatchedSlice
          id={id}
          azimuthDeg={report.turn.toLightAzimuthDeg}
          inner={0.72 * Math.min(BALL, reachAt(reach, report.turn.toLightAzimuthDeg)?.percent ?? BALL)}
          outer={extent + 6 * unitPx}
          unitPx={unitPx}
        />
      )}
      {reach.length > 0 && <path d={bandPath(reach)} className={styles.band} fillRule="evenodd" />}
      {earlier.length > 0 && <path d={ringPath(reachPlaces(earlier))} className={styles.earlier} />}
      <circle r={BALL} className={styles.ball} />
      <ReachLine reach={reach} unitPx={unitPx} />
      {lightAzimuthDeg !== null && <LightRays azimuthDeg={lightAzimuthDeg} extent={extent} unitPx={unitPx} />}
      {lopsidedness && <LeanArrow lean={lopsidedness} unitPx={unitPx} />}
      {width > 0 && children?.(unitPx)}
      {asked && (
        <g className={styles.asked}>
          <path d={`M0 0L${placeAt(asked.azimuthDeg, extent).join(' ')}`} />
          <circle {...centred(placeAt(asked.azimuthDeg, asked.percent))} r={6 * unitPx} />
        </g>
      )}
    </svg>
  );
}

function centred([cx, cy]: readonly [number, number]) {
  return { cx, cy };
}
