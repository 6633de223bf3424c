import type { ReactNode } from 'react';
import type { TurnedReport } from '../../../core/turned/measure-turned.ts';
import lines from './PlanClock.module.css';
import styles from './PlanLegend.module.css';
import { LEAN_TIMES } from './plan-shape.ts';

/** What each line of the plan is, with a sample of how it looks. */
export function PlanLegend({
  report,
  light,
  earlier,
}: {
  report: TurnedReport;
  light: string | null;
  earlier: boolean;
}) {
  const { reach, lopsidedness } = report.plan;
  const lean = lopsidedness !== null && !lopsidedness.even;
  const entries: readonly (readonly [boolean, ReactNode, string])[] = [
    [true, <path key="" d="M2 9H28" className={lines.ball} />, 'The ball: the circle to fill'],
    [
      reach.length > 0,
      <g key="">
        <path d="M2 9H28" className={lines.measured} />
        <circle cx="15" cy="9" r="4.4" className={lines.dot} />
      </g>,
      'Reach, measured: a silhouette ends there',
    ],
    [
      reach.some(({ measured }) => !measured),
      <path key="" d="M2 9H28" className={lines.between} />,
      'Reach, filled in between',
    ],
    [
      reach.length > 0,
      <rect key="" x="2" y="3" width="26" height="12" className={lines.band} />,
      'Its plus-minus: 19 times out of 20 it lies in here',
    ],
    [
      lean,
      <path key="" d="M3 9H26M20 4L26 9L20 14" className={lines.lean} />,
      `Lean to the heavy side, drawn ${LEAN_TIMES} times as long`,
    ],
    [
      lopsidedness !== null,
      <ellipse key="" cx="15" cy="9" rx="11" ry="6" className={lines.leanOval} />,
      lean ? 'Where its tip may lie' : 'Where the middle may lie, drawn 4 times as wide: even',
    ],
    [
      report.turn !== null,
      <path key="" d="M3 15L15 3M11 15L23 3M19 15L28 6" className={styles.weak} />,
      'Weak side: to the light with it',
    ],
    [light !== null, <path key="" d="M3 9H24M18 4L24 9L18 14" className={lines.rays} />, light ?? ''],
    [earlier, <path key="" d="M2 9H28" className={lines.earlier} />, 'The earlier sitting'],
  ];
  return (
    <ul className={styles.legend}>
      {entries.map(
        ([shown, sample, words]) =>
          shown && (
            <li key={words}>
              <svg width="30" height="18" viewBox="0 0 30 18" aria-hidden="true">
                {sample}
              </svg>
              {words}
            </li>
          ),
      )}
    </ul>
  );
}
