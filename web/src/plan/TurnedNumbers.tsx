import { lazy, Suspense, useState } from 'react';
import type { TurnedReport } from '../../../core/turned/measure-turned.ts';
import { plusMinusWords } from '../measures/reading.ts';
import list from '../measures/ScoreList.module.css';
import styles from '../measures/ScoreRow.module.css';
import { spokenFigure } from '../words/spoken-figure.ts';
import { readTurned, TURNED_MEASURES, TURNED_NAMES, type TurnedMeasure } from './turned-readings.ts';

const TurnedDefinition = lazy(() => import('./TurnedDefinition.tsx'));

/** Every number of a turned sitting; each opens to what it means. */
export function TurnedNumbers({ report }: { report: TurnedReport }) {
  return (
    <div className={list.list}>
      {TURNED_MEASURES.map((measure) => (
        <TurnedRow key={measure} measure={measure} report={report} />
      ))}
    </div>
  );
}

function TurnedRow({ measure, report }: { measure: TurnedMeasure; report: TurnedReport }) {
  const { value, plusMinus, unit, aside } = readTurned(report, measure);
  const figure = value === null ? null : spokenFigure({ value, plusMinus: plusMinusWords(plusMinus), unit });
  const [open, setOpen] = useState(false);
  return (
    <details className={styles.row} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className={styles.summary}>
        <span className={styles.extraName}>{TURNED_NAMES[measure]}</span>
        {figure === null ? (
          <span className={styles.unknown}>not known</span>
        ) : (
          <span className={styles.value}>
            <span className={styles.extraNumber}>{figure.value}</span>{' '}
            {figure.plusMinus !== null && <span className={styles.plusMinus}>{figure.plusMinus}</span>}{' '}
            <span className={styles.unit}>{figure.unit}</span>
          </span>
        )}
        {aside && <span className={styles.more}>{aside}</span>}
      </summary>
      {open && (
        <Suspense fallback={<p>One moment…</p>}>
          <TurnedDefinition measure={measure} plusMinusKnown={plusMinus !== null} />
        </Suspense>
      )}
    </details>
  );
}
