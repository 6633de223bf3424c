import { layOutCutMarks } from '../photo/cut-marks.ts';
import styles from './CutDrawings.module.css';
import type { ListedCut } from './listed-cut.ts';
import type { PlanMark } from './plan-marks.ts';

/** The cuts seen from above, each with its number outside the reach. */
export function PlanMarks({
  marks,
  held,
  unitPx,
}: {
  marks: readonly PlanMark[];
  held: ListedCut | null;
  unitPx: number;
}) {
  const placed = layOutCutMarks(marks, {
    centrePx: [0, 0],
    radiusPx: 0,
    barPx: 9 * unitPx,
    labelPx: 17 * unitPx,
    gapPx: 27 * unitPx,
  });
  return placed.map(({ mark, bar: [from, to], label }) => (
    <g
      key={mark.id}
      className={styles.planMark}
      data-left={mark.left || undefined}
      data-held={mark.id === held?.id || undefined}
      data-testid="plan-mark"
    >
      <path
        d={`M${label.join(' ')}L${mark.tipPx.join(' ')}L${mark.cutPx.join(' ')}`}
        className={styles.stem}
      />
      <path d={`M${from.join(' ')}L${to.join(' ')}`} className={styles.bar} />
      <circle cx={mark.tipPx[0]} cy={mark.tipPx[1]} r={4 * unitPx} className={styles.tip} />
      <g className={styles.disc}>
        <circle cx={label[0]} cy={label[1]} r={12 * unitPx} />
        <text x={label[0]} y={label[1]} dy="0.35em" fontSize={15 * unitPx}>
          {mark.done ? '✓' : mark.number}
        </text>
      </g>
    </g>
  ));
}
