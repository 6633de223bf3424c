import { useState } from 'react';
import type { CutList } from '../../../server/schemas/cuts.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import { BallForm } from './BallForm.tsx';
import styles from './BallSection.module.css';
import { GrowthWords } from './GrowthWords.tsx';

/** The ball that the list cuts down to, why, what it does to the date, and the other ways to choose it. */
export function BallSection({ plant, list }: { plant: Plant; list: CutList }) {
  const [choosing, choose] = useState(false);
  const { ball, ballWhyNot } = list;
  return (
    <section aria-labelledby="ball-name" className={styles.section}>
      <h2 id="ball-name">Ball to cut to</h2>
      {ball ? (
        <>
          <p className={styles.words}>{ball.words}</p>
          {ball.way === 'even-up' && ball.range && (
            <p>
              Between {Math.round(2 * ball.range[0])} and {Math.round(2 * ball.range[1])} mm across, 19 times
              out of 20.
            </p>
          )}
          <p>{ball.why}</p>
          {ball.needsDeepStops && (
            <p className={styles.deep}>
              <b>Tip stops do not reach it.</b> Every shoot has to go further back, not only those on the
              list.
            </p>
          )}
          {ball.dateEffectWords && (
            <p>
              <b>What it does to the date.</b> {ball.dateEffectWords}
            </p>
          )}
        </>
      ) : (
        <p className={styles.deep}>{ballWhyNot}</p>
      )}
      <details
        className={styles.other}
        open={choosing}
        onToggle={(event) => choose(event.currentTarget.open)}
      >
        <summary>Choose another ball</summary>
        <BallForm
          key={JSON.stringify([plant.cutTo, plant.showDay])}
          plant={plant}
          onClose={() => choose(false)}
        />
      </details>
      <GrowthWords list={list} plant={plant} />
    </section>
  );
}
