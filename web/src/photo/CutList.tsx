import type { PhotoReport } from '../../../core/report.ts';
import { clockWords } from '../words/plant-words.ts';
import styles from './CutList.module.css';
import { numberedStems } from './cut-marks.ts';
import { excessWords } from './overlay-words.ts';

/** The cut marks in words, under the numbers they carry on the photo. */
export function CutList({ report }: { report: PhotoReport }) {
  const { ball, longStems } = report;
  if (!ball || longStems.length === 0) return null;
  return (
    <details className={styles.cuts}>
      <summary>The cut marks in words</summary>
      <ol>
        {numberedStems(longStems).map(({ number, stem }) => (
          <li key={number}>
            {clockWords(stem.clock)}: {stem.kind === 'shoot' ? 'a long stem' : 'a broad shoulder'},{' '}
            <b>{excessWords(stem)}</b> outside the ball
          </li>
        ))}
      </ol>
    </details>
  );
}
