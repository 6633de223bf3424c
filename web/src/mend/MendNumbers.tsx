import type { View } from '../../../server/schemas/sitting.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { numberWords, plusMinusWords, readMeasure } from '../measures/reading.ts';
import { sureWords } from '../photo/outline-words.ts';
import styles from './MendTools.module.css';

const SHOWN = ['roundness', 'symmetry', 'lopsidedness'] as const;

/** The numbers that move with the outline, kept in sight while it is mended. */
export function MendNumbers({ view }: { view: View }) {
  const { report } = view;
  if (report?.status !== 'measured') {
    return <p className={styles.trouble}>{report?.hint ?? 'This photo has no outline.'}</p>;
  }
  return (
    <dl className={styles.numbers}>
      {report.confidence !== null && (
        <div>
          <dt>Outline</dt>
          <dd>{sureWords(report.confidence)}</dd>
        </div>
      )}
      {SHOWN.map((measure) => {
        const { value, plusMinus, unit } = readMeasure(report, measure);
        return (
          value !== null && (
            <div key={measure}>
              <dt>{MEASURE_NAMES[measure]}</dt>
              <dd>
                <b>{numberWords(value, measure)}</b> {plusMinusWords(plusMinus)} {unit === '%' && unit}
              </dd>
            </div>
          )
        );
      })}
    </dl>
  );
}
