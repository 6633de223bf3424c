import type { TurnedReport } from '../../../core/turned/measure-turned.ts';
import { SURENESS_WORDS } from '../words/need-words.ts';
import styles from './WeakSide.module.css';

/** Which side to bring to the light, why and how sure; of an even plant, that it is even. */
export function WeakSide({ report: { turn, plan } }: { report: TurnedReport }) {
  if (turn === null) {
    return plan.lopsidedness?.even ? (
      <p className={styles.even}>
        <b>Even all round</b>, within the plus-minus. No side needs the light more.
      </p>
    ) : null;
  }
  return (
    <div className={styles.turn}>
      <h3>{turn.words}</h3>
      <p>{turn.why}</p>
      <p>
        <b>{SURENESS_WORDS[turn.sure]}.</b>
      </p>
    </div>
  );
}
