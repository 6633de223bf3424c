import { useState } from 'react';
import type { PhotoReport } from '../../../core/report.ts';
import type { Point } from '../photo/points.ts';
import { spokenFigure } from '../words/spoken-figure.ts';
import { changeSince } from './change.ts';
import { MEASURE_NAMES } from './measure-names.ts';
import { OpenedDefinition } from './OpenedDefinition.tsx';
import { Rule } from './Rule.tsx';
import { type Measure, numberWords, plusMinusWords, readMeasure } from './reading.ts';
import styles from './ScoreRow.module.css';

const SENSE_MARKS = { better: '▲ better, ', worse: '▼ worse, ', neither: '' } as const;

/** One number with its plus-minus and change; opened, it says what it means and how it is measured. */
export function ScoreRow({
  measure,
  report,
  outlinePx,
  before,
}: {
  measure: Measure;
  report: PhotoReport;
  outlinePx: readonly Point[];
  before: PhotoReport | null;
}) {
  const { value, plusMinus, unit, aside } = readMeasure(report, measure);
  const figure =
    value === null
      ? null
      : spokenFigure({ value: numberWords(value, measure), plusMinus: plusMinusWords(plusMinus), unit });
  const [open, setOpen] = useState(false);
  const change = before && changeSince(report, before, measure);
  return (
    <details className={styles.row} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className={styles.summary}>
        <span className={styles.name}>{MEASURE_NAMES[measure]}</span>
        {figure === null ? (
          <span className={styles.unknown}>not known</span>
        ) : (
          <span className={styles.value}>
            <span className={styles.number}>{figure.value}</span>{' '}
            {figure.plusMinus !== null && <span className={styles.plusMinus}>{figure.plusMinus}</span>}{' '}
            <span className={styles.unit}>{figure.unit}</span>
          </span>
        )}
        <span className={styles.more}>
          {aside && <span>{aside}</span>}
          {change && (
            <span className={styles.change}>
              {SENSE_MARKS[change.sense]}
              {change.words}
            </span>
          )}
        </span>
        <Rule measure={measure} report={report} before={before} />
      </summary>
      {open && (
        <OpenedDefinition
          measure={measure}
          plusMinusKnown={plusMinus !== null}
          photo={{ report, outlinePx }}
        />
      )}
    </details>
  );
}
