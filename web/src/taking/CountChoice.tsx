import { Choices } from '../parts/Choices.tsx';
import styles from './TurnedScreen.module.css';
import { takingChoice } from './taking-choice.ts';
import { COUNT_MEANINGS, TWINS_WORDS } from './taking-words.ts';
import { USUAL_COUNT, VIEW_COUNTS, type ViewCount } from './turn-plan.ts';

/** How many views to take, and what so many can and cannot tell. */
export function CountChoice() {
  const choice = takingChoice.useValue();
  const { tells, cannot } = COUNT_MEANINGS[choice.count];
  return (
    <section aria-labelledby="count-name" className={styles.part}>
      <h2 id="count-name">How many views</h2>
      <Choices
        legend="Views"
        legendHidden
        options={VIEW_COUNTS.map((count) => ({
          value: String(count),
          words: count === USUAL_COUNT ? `${count} (usual)` : String(count),
        }))}
        chosen={String(choice.count)}
        onChoose={(count) => takingChoice.write({ ...choice, count: Number(count) as ViewCount })}
      />
      <dl className={styles.meaning} aria-live="polite">
        <div>
          <dt>Tells</dt>
          <dd>{tells}</dd>
        </div>
        <div>
          <dt>Cannot tell</dt>
          <dd>{cannot}</dd>
        </div>
      </dl>
      <p className={styles.sub}>{TWINS_WORDS}</p>
    </section>
  );
}
