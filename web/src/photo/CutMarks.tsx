import type { Ball } from '../../../core/report.ts';
import { placeCutLabels } from './cut-label-places.ts';
import type { NumberedMark } from './cut-marks.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import styles from './Overlay.module.css';
import type { Box } from './points.ts';
import { Tappable } from './Tappable.tsx';

/** A cut mark with its words. */
export interface CutMarkWords extends NumberedMark {
  /** On the label: how much. */
  readonly words: string;
  /** What it says when it is tapped. */
  readonly told: string;
  /** Already carried out: the label alone stays plain. */
  readonly done?: boolean;
  /** The one in hand stands out. */
  readonly held?: boolean;
}

/** Each stem to shorten: from tip to cut mark, the bar where the tool goes, its number and how much. */
export function CutMarks({
  marks,
  ball,
  crop,
  unitPx,
  onTell,
}: {
  marks: readonly CutMarkWords[];
  ball: Pick<Ball, 'centrePx' | 'radiusPx'>;
  crop: Box;
  unitPx: number;
  onTell: (words: string, number: number) => void;
}) {
  return placeCutLabels(marks, ball, crop, unitPx).map(
    ({ mark, bar: [[fromX, fromY], [toX, toY]], at: label, isInside }) => {
      const { number, tipPx, cutPx, words, told, done = false, held = false } = mark;
      const leader = `M${tipPx.join(' ')}L${cutPx.join(' ')}${isInside ? '' : `M${tipPx.join(' ')}`}L${label.join(' ')}`;
      const bar = `M${fromX} ${fromY}L${toX} ${toY}`;
      return (
        <Tappable key={number} words={told} onTell={(said) => onTell(said, number)}>
          <g data-done={done || undefined} data-held={held || undefined} className={styles.cut}>
            <path d={leader} className={styles.leaderCasing} />
            <path d={leader} className={styles.leader} />
            <path d={bar} className={styles.barCasing} />
            <path d={bar} className={styles.bar} />
            <path d={leader} className={styles.reach} />
            <DrawnLabel at={label} words={words} number={number} crop={crop} unitPx={unitPx} />
          </g>
        </Tappable>
      );
    },
  );
}
