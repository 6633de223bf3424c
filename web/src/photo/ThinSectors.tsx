import type { Ball } from '../../../core/report.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import type { Plate } from './free-place.ts';
import { thinLabel, thinTold } from './leaf-words.ts';
import styles from './Overlay.module.css';
import type { Box, Point } from './points.ts';
import { Tappable } from './Tappable.tsx';
import type { ThinRun } from './thin-sectors.ts';
import type { ZoneToName } from './zone-labels.ts';

/** The drawn part of a sector reaches from here to the ball's edge, share of its radius. */
const INNER = 0.55;
const HOUR_RAD = Math.PI / 6;

/** The thin places to be named: beside the middle of each, just inside the ball. */
export function thinToName(runs: readonly ThinRun[], ball: Ball): ZoneToName[] {
  return runs.map((run) => {
    const hours = (run.toClock - run.fromClock + 12) % 12;
    const middle = pointAt(ball, run.fromClock + hours / 2, 0.84);
    return { words: thinLabel(run), centrePx: middle, reachPx: [ball.radiusPx * 0.16, ball.radiusPx * 0.1] };
  });
}

/** Hours of the ball where the canopy is thin: a broken wedge of rings with a thick arc at the ball's edge. */
export function ThinSectors({
  id,
  runs,
  ball,
  plates,
  crop,
  unitPx,
  onTell,
}: {
  id: string;
  runs: readonly ThinRun[];
  ball: Ball;
  /** One a run; `null` where no place was free. */
  plates: readonly (Plate | null)[];
  crop: Box;
  unitPx: number;
  onTell: (words: string) => void;
}) {
  const spacing = 12 * unitPx;
  return (
    <>
      <defs>
        <pattern id={`${id}-thin`} width={spacing} height={spacing} patternUnits="userSpaceOnUse">
          <rect width={spacing} height={spacing} className={styles.thinGround} />
          <circle cx={spacing / 2} cy={spacing / 2} r={spacing * 0.22} className={styles.thinRing} />
        </pattern>
      </defs>
      {runs.map((run) => {
        const [from, to] = [run.fromClock - 0.5, run.fromClock + hoursOf(run) - 0.5];
        const wide = hoursOf(run) > 6 ? 1 : 0;
        const [outerA, outerB] = [pointAt(ball, from, 1), pointAt(ball, to, 1)];
        const [innerA, innerB] = [pointAt(ball, from, INNER), pointAt(ball, to, INNER)];
        const arc = `M${outerA.join(' ')}A${ball.radiusPx} ${ball.radiusPx} 0 ${wide} 1 ${outerB.join(' ')}`;
        const inner = ball.radiusPx * INNER;
        const wedge = `${arc}L${innerB.join(' ')}A${inner} ${inner} 0 ${wide} 0 ${innerA.join(' ')}Z`;
        return (
          <Tappable key={run.fromClock} words={thinTold(run)} onTell={onTell}>
            <path d={wedge} fill={`url(#${id}-thin)`} />
            <path d={wedge} className={styles.thinCasing} />
            <path d={wedge} className={styles.thinEdge} />
            <path d={arc} className={styles.thinArcCasing} />
            <path d={arc} className={styles.thinArc} />
          </Tappable>
        );
      })}
      {runs.map((run, at) => {
        const plate = plates[at];
        return (
          plate && (
            <g key={run.fromClock} className={styles.name}>
              <DrawnLabel at={plate.at} words={thinLabel(run)} crop={crop} unitPx={unitPx} />
            </g>
          )
        );
      })}
    </>
  );
}

function hoursOf({ fromClock, toClock }: ThinRun): number {
  return ((toClock - fromClock + 12) % 12) + 1;
}

/** A place of the ball by the photo's clock, 12 on top, at a share of its radius. */
function pointAt({ centrePx: [x, y], radiusPx }: Ball, clock: number, share: number): Point {
  const turn = clock * HOUR_RAD;
  return [x + radiusPx * share * Math.sin(turn), y - radiusPx * share * Math.cos(turn)];
}
