import { useState } from 'react';
import type { PhotoReport } from '../../../core/report.ts';
import {
  EXTRA_MEASURES,
  EXTRA_NAMES,
  type ExtraMeasure,
  type ExtraReading,
  readExtra,
} from './extra-readings.ts';
import { OpenedDefinition } from './OpenedDefinition.tsx';
import styles from './ScoreRow.module.css';

/** Other ways in use to say how round and upright the silhouette is; no advice rests on them. */
export default function ExtrasList({ report }: { report: PhotoReport }) {
  const { extras, scale } = report;
  if (!extras) return <p>This photo has none.</p>;
  return EXTRA_MEASURES.map((extra) => (
    <ExtraRow key={extra} extra={extra} reading={readExtra(extras, extra, scale?.mmPerPx ?? null)} />
  ));
}

function ExtraRow({ extra, reading }: { extra: ExtraMeasure; reading: ExtraReading }) {
  const [open, setOpen] = useState(false);
  return (
    <details className={styles.row} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className={styles.summary}>
        <span className={styles.extraName}>{EXTRA_NAMES[extra]}</span>
        {reading.value === null ? (
          <span className={styles.unknown}>not known</span>
        ) : (
          <span className={styles.value}>
            <span className={styles.extraNumber}>{reading.value}</span>{' '}
            <span className={styles.unit}>{reading.unit}</span>
          </span>
        )}
        {reading.aside && <span className={styles.more}>{reading.aside}</span>}
      </summary>
      {open && <OpenedDefinition measure={extra} plusMinusKnown={false} />}
    </details>
  );
}
