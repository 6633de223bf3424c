import { useId, useRef } from 'react';
import { placeWords } from '../../../core/turned/place-words.ts';
import type { PlantLight } from '../../../server/schemas/light.ts';
import { useWidth } from '../photo/use-width.ts';
import { placeAt, slicePath } from '../plan/azimuth.ts';
import { ClockFace } from '../plan/ClockFace.tsx';
import { HatchedSlice } from '../plan/HatchedSlice.tsx';
import { LightRays } from '../plan/LightRays.tsx';
import clock from '../plan/PlanClock.module.css';
import styles from './LedgerDial.module.css';
import { daysWords } from './light-words.ts';

/** Outermost radius of the slices, and room outside it in CSS px. */
const FULL = 100;
const ROOM_PX = 56;

/** Days that each side has faced the light, seen from above: each eighth a slice whose area goes by its days. */
export function LedgerDial({ ledger }: { ledger: PlantLight['ledger'] }) {
  const place = useRef<SVGSVGElement>(null);
  const width = useWidth(place);
  const id = useId();
  const unitPx = width > 0 ? FULL / Math.max(width / 2 - ROOM_PX, 40) : 1;
  const half = FULL + ROOM_PX * unitPx;
  const { sides, gapAzimuthDeg, nowFacesDeg } = ledger;
  const most = Math.max(1, ...sides.map(({ daysFaced }) => daysFaced));
  const radiusOf = (days: number) => FULL * Math.sqrt(days / most);
  const heard = sides
    .filter(({ daysFaced }) => daysFaced > 0)
    .map(({ azimuthDeg, daysFaced }) => `${placeWords(azimuthDeg)} ${daysWords(daysFaced)}`)
    .join(', ');
  return (
    <svg
      ref={place}
      className={`${clock.clock} ${styles.dial}`}
      viewBox={`${-half} ${-half} ${2 * half} ${2 * half}`}
      role="img"
      aria-label={`Days each side has faced the light, seen from above, the mark at 6 o’clock: ${heard || 'none yet'}.`}
      data-testid="ledger-dial"
    >
      <ClockFace extent={FULL} unitPx={unitPx} />
      {gapAzimuthDeg !== null && (
        <HatchedSlice
          id={id}
          azimuthDeg={gapAzimuthDeg}
          inner={0}
          outer={FULL + 6 * unitPx}
          unitPx={unitPx}
        />
      )}
      {sides.map(({ azimuthDeg, daysFaced }) => {
        if (daysFaced === 0) return null;
        const radius = radiusOf(daysFaced);
        const [x, y] = placeAt(azimuthDeg, Math.max(radius - 16 * unitPx, 0.62 * radius));
        return (
          <g key={azimuthDeg}>
            <path
              d={slicePath(azimuthDeg - 21, azimuthDeg + 21, { inner: 0, outer: radius })}
              className={styles.slice}
            />
            {radius > 30 * unitPx && (
              <text x={x} y={y} dy="0.35em" className={styles.days} fontSize={16 * unitPx}>
                {daysFaced}
              </text>
            )}
          </g>
        );
      })}
      {nowFacesDeg !== null && <LightRays azimuthDeg={nowFacesDeg} extent={FULL} unitPx={unitPx} />}
    </svg>
  );
}
