import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import { arcPath, placeAt } from '../plan/azimuth.ts';
import styles from './StandFromAbove.module.css';
import { markFromCameraDeg, shotName } from './taking-words.ts';
import type { Slot } from './turn-plan.ts';

/** Radii of the drawing, whose half side is 160. */
const POT = 56;
const SLOTS = 107;
const ARROW = 74;

/** The stand from above, the camera at 6 o'clock: where the mark stands, where it must go, and the shots to choose from. */
export function StandFromAbove({
  slots,
  targetDeg,
  standsAtDeg,
  onChoose,
}: {
  slots: readonly Slot[];
  /** Turn of the next shot; `null` when all are taken. */
  targetDeg: number | null;
  /** Turn of the pot by the last shot; `null` before the first. */
  standsAtDeg: number | null;
  onChoose: (turnDeg: number) => void;
}) {
  const shown = targetDeg ?? standsAtDeg ?? 0;
  return (
    <div className={styles.plan}>
      <svg viewBox="-160 -160 320 320" className={styles.drawing} aria-hidden="true">
        <circle r={POT} className={styles.pot} />
        <circle r={POT - 10} className={styles.soil} />
        <path d="M0 136V70" className={styles.sight} />
        <path d="M-17 157V139H-8L-5 133H5L8 139H17V157Z" className={styles.camera} />
        {standsAtDeg !== null && targetDeg !== null && <TurnArrow fromDeg={standsAtDeg} toDeg={targetDeg} />}
        {standsAtDeg !== null && targetDeg !== null && <Mark turnDeg={standsAtDeg} old />}
        <Mark turnDeg={shown} />
      </svg>
      {slots.map(({ turnDeg, view }, index) => {
        const [x, y] = placeAt(markFromCameraDeg(turnDeg), SLOTS);
        return (
          <button
            key={turnDeg}
            type="button"
            className={styles.slot}
            style={{ left: `${50 + x / 3.2}%`, top: `${50 + y / 3.2}%` }}
            aria-current={turnDeg === targetDeg ? 'step' : undefined}
            data-taken={view !== null || undefined}
            aria-label={`Shot ${index + 1}: ${shotName(turnDeg)}${view ? ', taken' : ''}`}
            onClick={() => onChoose(turnDeg)}
          >
            {view ? '✓' : index + 1}
          </button>
        );
      })}
    </div>
  );
}

/** The mark on the rim, with a line from the middle so that its direction shows. */
function Mark({ turnDeg, old = false }: { turnDeg: number; old?: boolean }) {
  const [x, y] = placeAt(markFromCameraDeg(turnDeg), POT);
  return (
    <g className={old ? styles.oldMark : styles.mark}>
      <path d={`M0 0L${x} ${y}`} />
      <circle cx={x} cy={y} r="8" />
    </g>
  );
}

/** Which way the mark goes, from where it is to where it must be. */
function TurnArrow({ fromDeg, toDeg }: { fromDeg: number; toDeg: number }) {
  const from = markFromCameraDeg(fromDeg);
  const by = turnBetween(from, markFromCameraDeg(toDeg));
  if (Math.abs(by) < 1) return null;
  // Half a turn may go either way: the way of the clock, as all other turns.
  const turned = Math.abs(by) > 179.5 ? -180 : by;
  const to = from + turned;
  const back = Math.sign(turned) * -7;
  const wing = (radius: number) => placeAt(to + back, radius).join(' ');
  return (
    <path
      d={`${arcPath(from, to, ARROW)}M${wing(ARROW - 9)}L${placeAt(to, ARROW).join(' ')}L${wing(ARROW + 9)}`}
      className={styles.arrow}
    />
  );
}
