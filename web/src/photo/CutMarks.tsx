import type { Ball } from '../../../core/report.ts';
import { insideLabel, layOutCutMarks, type NumberedMark } from './cut-marks.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import { freePlace } from './free-place.ts';
import { clampInto, type LabelSize, labelSize, plateCovers } from './label-size.ts';
import styles from './Overlay.module.css';
import type { Box, Point } from './points.ts';
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
  const placed = layOutCutMarks(marks, {
    centrePx: ball.centrePx,
    radiusPx: ball.radiusPx,
    barPx: 13 * unitPx,
    labelPx: 26 * unitPx,
    gapPx: 60 * unitPx,
  });
  const taken: { at: Point; size: LabelSize }[] = [];
  return placed.map((one) => {
    const { number, tipPx, cutPx, words, told, done = false, held = false } = one.mark;
    const size = labelSize(words, unitPx, true);
    const outside = clampInto(crop, one.label, size);
    // Where the window leaves no room outside, the label goes inside the ball rather than over the mark.
    const covered = plateCovers(outside, size, [tipPx, cutPx, ...one.bar]);
    const near = covered ? insideLabel(one, ball.centrePx, size.width / 2 + 14 * unitPx) : outside;
    const label = freePlace({ at: near, size }, taken);
    taken.push({ at: label, size });
    const leader = `M${tipPx.join(' ')}L${cutPx.join(' ')}${covered ? '' : `M${tipPx.join(' ')}`}L${label.join(' ')}`;
    const [[fromX, fromY], [toX, toY]] = one.bar;
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
  });
}
