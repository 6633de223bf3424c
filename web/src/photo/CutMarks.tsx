import type { Ball, LongStem } from '../../../core/report.ts';
import { insideLabel, layOutCutMarks } from './cut-marks.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import { clampInto, labelSize, plateCovers } from './label-size.ts';
import styles from './Overlay.module.css';
import { cutWords, excessWords } from './overlay-words.ts';
import type { Box } from './points.ts';
import { Tappable } from './Tappable.tsx';

/** Each long stem: from tip to cut mark, the bar where the tool goes, its number and how much. */
export function CutMarks({
  stems,
  ball,
  crop,
  unitPx,
  onTell,
}: {
  stems: readonly LongStem[];
  ball: Ball;
  crop: Box;
  unitPx: number;
  onTell: (words: string) => void;
}) {
  const marks = layOutCutMarks(stems, {
    centrePx: ball.centrePx,
    radiusPx: ball.radiusPx,
    barPx: 13 * unitPx,
    labelPx: 26 * unitPx,
    gapPx: 60 * unitPx,
  });
  return marks.map((mark) => {
    const words = excessWords(mark.stem);
    const size = labelSize(words, unitPx, true);
    const { tipPx, cutPx } = mark.stem;
    const outside = clampInto(crop, mark.label, size);
    // Where the window leaves no room outside, the label goes inside the ball rather than over the mark.
    const covered = plateCovers(outside, size, [tipPx, cutPx, ...mark.bar]);
    const label = covered ? insideLabel(mark, ball.centrePx, size.width / 2 + 14 * unitPx) : outside;
    const leader = `M${tipPx.join(' ')}L${cutPx.join(' ')}${covered ? '' : `M${tipPx.join(' ')}`}L${label.join(' ')}`;
    const [[fromX, fromY], [toX, toY]] = mark.bar;
    const bar = `M${fromX} ${fromY}L${toX} ${toY}`;
    return (
      <Tappable key={mark.number} words={cutWords(mark)} onTell={onTell}>
        <path d={leader} className={styles.leaderCasing} />
        <path d={leader} className={styles.leader} />
        <path d={bar} className={styles.barCasing} />
        <path d={bar} className={styles.bar} />
        <path d={leader} className={styles.reach} />
        <DrawnLabel at={label} words={words} number={mark.number} crop={crop} unitPx={unitPx} />
      </Tappable>
    );
  });
}
