import { day, daysBetween } from '../../../core/day/day.ts';
import { TURN_WEIGHTS } from '../../../core/light/turn-weights.ts';
import type { PlantLight } from '../../../server/schemas/light.ts';
import fold from '../parts/twin.module.css';
import { agoWords, dayWords, todayHere } from '../words/day-words.ts';
import { SURENESS_WORDS } from '../words/need-words.ts';
import styles from './LightSection.module.css';

const { weakSide, leastLight, rhythm } = TURN_WEIGHTS.nextTurn;

const CHOSEN_WORDS = `Three voices each point to a side, and of the turns that the rhythm allows the one that lies best with all three is taken: the weak side from the last turned sitting (weight ${weakSide}, less when it is unsure), the rhythm (${rhythm}) and the side that has had the least light (${leastLight}, more the more uneven the light was). It is due by the rhythm alone. No published rate tells how to weigh them: the weights are Rondure’s own choice.`;

/** The next turn: when, how far, why and how sure. */
export function NextTurn({ next }: { next: NonNullable<PlantLight['next']> }) {
  const today = todayHere();
  const inDays = daysBetween(today, day(next.dueDay));
  const when =
    inDays < 0
      ? `Due since ${dayWords(next.dueDay, today)}`
      : inDays === 0
        ? 'Due today'
        : `Due ${dayWords(next.dueDay, today)}, ${agoWords(next.dueDay, today)}`;
  return (
    <div className={styles.next}>
      <p>
        <b>{when}.</b>
      </p>
      <h3>{next.words}</h3>
      <p>{next.why}</p>
      <p>
        <b>{SURENESS_WORDS[next.sure]}.</b>
      </p>
      <details className={fold.twin}>
        <summary>How it is chosen</summary>
        <p>{CHOSEN_WORDS}</p>
      </details>
    </div>
  );
}
