import type { PhotoReport } from '../../../core/report.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { numberWords, plusMinusWords, readMeasure } from '../measures/reading.ts';
import styles from './ScoreLine.module.css';

const SHOWN = ['roundness', 'symmetry', 'lopsidedness'] as const;

/** The three shape numbers of the newest photo, each with its plus-minus. Nothing when it was not measured. */
export function ScoreLine({ report }: { report: PhotoReport | null }) {
  if (report?.status !== 'measured') return null;
  return (
    <dl className={styles.line}>
      {SHOWN.map((measure) => {
        const { value, plusMinus, unit, aside } = readMeasure(report, measure);
        return (
          <div key={measure}>
            <dt>{MEASURE_NAMES[measure]}</dt>
            <dd>
              {value === null ? (
                <span className={styles.unknown}>not known</span>
              ) : (
                <>
                  <span className={styles.number}>{numberWords(value, measure)}</span>
                  <span className={styles.rest}>
                    {unit === '%' && ' %'} {plusMinusWords(plusMinus)}
                  </span>
                  {aside && <span className={styles.aside}>{aside}</span>}
                </>
              )}
            </dd>
          </div>
        );
      })}
    </dl>
  );
}
