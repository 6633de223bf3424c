import { useState } from 'react';
import type { PlantKind } from '../../../core/plant.ts';
import type { PhotoReport } from '../../../core/report.ts';
import { spokenFigure } from '../words/spoken-figure.ts';
import {
  EXTRA_MEASURES,
  EXTRA_NAMES,
  type ExtraMeasure,
  type MoreReading,
  readExtra,
} from './extra-readings.ts';
import { OpenedDefinition } from './OpenedDefinition.tsx';
import { PLANT_GROUPS, PLANT_NAMES, type PlantMeasure, readPlant } from './plant-readings.ts';
import list from './ScoreList.module.css';
import styles from './ScoreRow.module.css';

/** Leaf, flower, gaps and size of the canopy, then other ways in use to say how round and upright the silhouette is. */
export default function ExtrasList({
  report,
  before,
  kind,
}: {
  report: PhotoReport;
  before: PhotoReport | null;
  kind: PlantKind;
}) {
  const { extras, scale } = report;
  return (
    <>
      {PLANT_GROUPS.map(({ name, measures }) => (
        <section key={name} className={list.group}>
          <h3>{name}</h3>
          {measures.map((measure) => (
            <MoreRow
              key={measure}
              measure={measure}
              name={PLANT_NAMES[measure]}
              reading={readPlant(report, before, kind, measure)}
            />
          ))}
        </section>
      ))}
      {extras && (
        <section className={list.group}>
          <h3>Other ways to say how round and upright</h3>
          <p className={list.sub}>No advice rests on them.</p>
          {EXTRA_MEASURES.map((extra) => (
            <MoreRow
              key={extra}
              measure={extra}
              name={EXTRA_NAMES[extra]}
              reading={readExtra(extras, extra, scale?.mmPerPx ?? null)}
            />
          ))}
        </section>
      )}
    </>
  );
}

function MoreRow({
  measure,
  name,
  reading,
}: {
  measure: ExtraMeasure | PlantMeasure;
  name: string;
  reading: MoreReading;
}) {
  const [open, setOpen] = useState(false);
  const { value, plusMinus, aside } = reading;
  const figure = value === null ? null : spokenFigure({ ...reading, value });
  return (
    <details className={styles.row} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary className={styles.summary}>
        <span className={styles.extraName}>{name}</span>
        {figure === null ? (
          <span className={styles.unknown}>not known</span>
        ) : (
          <span className={styles.value}>
            <span className={styles.extraNumber}>{figure.value}</span>{' '}
            {figure.plusMinus && <span>{figure.plusMinus}</span>}{' '}
            <span className={styles.unit}>{figure.unit}</span>
          </span>
        )}
        {aside && <span className={styles.more}>{aside}</span>}
      </summary>
      {open && <OpenedDefinition measure={measure} plusMinusKnown={plusMinus !== null} />}
    </details>
  );
}
