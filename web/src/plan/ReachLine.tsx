import type { PlanReach } from '../../../core/turned/measure-turned.ts';
import { linePath } from './azimuth.ts';
import styles from './PlanClock.module.css';
import { type ReachRun, reachRuns } from './plan-shape.ts';

/** The reach: full with a dot where a silhouette ends, broken where it is filled in between. */
export function ReachLine({ reach, unitPx }: { reach: readonly PlanReach[]; unitPx: number }) {
  const runs = reachRuns(reach);
  return (
    <g>
      {runs.map((run) => (
        <path
          key={run.places[0]?.join()}
          d={linePath(run.places)}
          className={run.measured ? styles.measured : styles.between}
        />
      ))}
      {runs.map((run) => run.measured && <SilhouetteEnd key={run.places[0]?.join()} {...{ run, unitPx }} />)}
    </g>
  );
}

/** The middle of a measured stretch. */
function SilhouetteEnd({ run, unitPx }: { run: ReachRun; unitPx: number }) {
  const [cx, cy] = run.places[Math.floor((run.places.length - 1) / 2)] ?? [0, 0];
  return <circle cx={cx} cy={cy} r={4.4 * unitPx} className={styles.dot} data-testid="silhouette-end" />;
}
