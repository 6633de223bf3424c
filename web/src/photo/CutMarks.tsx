import type { Ball, LongStem } from '../../../core/report.ts';
import { layOutCutMarks } from './cut-marks.ts';
import { DrawnLabel } from './DrawnLabel.tsx';
import { clampInto, labelSize } from './label-size.ts';
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
    gapPx: 62 * unitPx,
  });
  return marks.map((mark) => {
    const words = `${mark.number}  ${excessWords(mark.stem)}`;
    const [labelX, labelY] = clampInto(crop, mark.label, labelSize(words, unitPx));
    const [tipX, tipY] = mark.stem.tipPx;
    const [[fromX, fromY], [toX, toY]] = mark.bar;
    const leader = `M${mark.stem.cutPx.join(' ')}L${tipX} ${tipY}L${labelX} ${labelY}`;
    const bar = `M${fromX} ${fromY}L${toX} ${toY}`;
    return (
      <Tappable key={mark.number} words={cutWords(mark)} onTell={onTell}>
        <path d={leader} className={styles.leaderCasing} />
        <path d={leader} className={styles.leader} />
        <path d={bar} className={styles.barCasing} />
        <path d={bar} className={styles.bar} />
        <path d={leader} className={styles.reach} />
        <DrawnLabel at={[labelX, labelY]} words={words} tone="cut" crop={crop} unitPx={unitPx} />
      </Tappable>
    );
  });
}
