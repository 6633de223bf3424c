import { type SyntheticEvent, useState } from 'react';
import type { CutList } from '../../../server/schemas/cuts.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { OpenedDefinition } from '../measures/OpenedDefinition.tsx';
import styles from '../measures/ScoreRow.module.css';
import sections from './BallSection.module.css';

const MEASURES = ['roundness', 'symmetry', 'lopsidedness'] as const;

/** What each score means, and what "after" is. */
export function ScoreMeanings({ list }: { list: CutList }) {
  return (
    <section aria-labelledby="meanings-name" className={sections.section}>
      <h2 id="meanings-name">What the scores mean</h2>
      <p>
        “After” is the same photo with the chosen stems taken off at their marks, measured by the same rules.
        It shows the work done to the millimetre and no leaf moved, so the plant itself may differ.
        {list.from === 'turned' && ' Roundness and symmetry are the mean of the views.'}
      </p>
      <div>
        {MEASURES.map((measure) => (
          <ScoreMeaning key={measure} measure={measure} />
        ))}
      </div>
    </section>
  );
}

function ScoreMeaning({ measure }: { measure: (typeof MEASURES)[number] }) {
  const [open, setOpen] = useState(false);
  return (
    <details
      className={styles.row}
      onToggle={(event: SyntheticEvent<HTMLDetailsElement>) => setOpen(event.currentTarget.open)}
    >
      <summary className={styles.summary}>
        <span className={styles.name}>{MEASURE_NAMES[measure]}</span>
        <span className={styles.unknown} />
      </summary>
      {open && <OpenedDefinition measure={measure} plusMinusKnown />}
    </details>
  );
}
