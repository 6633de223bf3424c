import { SURENESS_WORDS } from '../words/need-words.ts';
import { STOP_MEANINGS, STOP_WORDS } from '../words/plant-words.ts';
import styles from './CutRow.module.css';
import { doubtWords, shootWords } from './cut-words.ts';
import type { ListedCut } from './listed-cut.ts';

/** Why a cut is on the list, above which shoot, and how sure; one tap away. */
export function CutWhy({ cut }: { cut: ListedCut }) {
  const doubt = doubtWords(cut);
  return (
    <dl className={styles.why}>
      <div>
        <dt>Why</dt>
        <dd>{cut.why}</dd>
      </div>
      <div>
        <dt>How sure</dt>
        <dd>
          <b>{SURENESS_WORDS[cut.sure]}.</b>
          {doubt && <> The amount is good to {doubt}.</>}
        </dd>
      </div>
      <div>
        <dt>Where on the stem</dt>
        <dd>{shootWords(cut)}</dd>
      </div>
      <div>
        <dt>{STOP_WORDS[cut.stop]}</dt>
        <dd>{STOP_MEANINGS[cut.stop]}</dd>
      </div>
    </dl>
  );
}
