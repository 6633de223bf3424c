import type { ReactNode } from 'react';
import { Link } from 'wouter';
import type { Advice } from '../../../core/advice/advice.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { NeedMark } from '../parts/NeedMark.tsx';
import { SURENESS_WORDS } from '../words/need-words.ts';
import styles from './AdviceList.module.css';

/** What the newest sitting advises: what, where, how much, why, how sure, and the caution beside it. */
export function AdviceList({
  advice,
  plantId,
  children,
}: {
  advice: readonly Advice[];
  plantId: string;
  /** What is to be answered first. */
  children?: ReactNode;
}) {
  return (
    <section aria-labelledby="advice-name">
      <h2 id="advice-name" className={styles.name}>
        What to do
      </h2>
      {children}
      {advice.length === 0 ? (
        <p>Nothing to do now.</p>
      ) : (
        <ol className={styles.list}>
          {[...advice]
            .sort((a, b) => b.urgency - a.urgency)
            .map((piece) => (
              <AdvicePiece key={`${piece.kind}${piece.what}`} piece={piece} plantId={plantId} />
            ))}
        </ol>
      )}
    </section>
  );
}

/** Longer reasons begin with their first sentences, the rest a press away: a phone has other advice to show. */
const AT_ONCE_LETTERS = 240;

/** No element where the words are to stand alone: only the words of an element are put into the reader's language. */
function reason(words: string): ReactNode {
  if (words.length <= AT_ONCE_LETTERS) return words;
  const sentences = words.split(/(?<=\.) (?=\p{Lu})/u);
  const [first, second, ...rest] = sentences;
  if (rest.length === 0) return words;
  return (
    <>
      {first} {second}
      <details className={styles.rest}>
        <summary>How that was reckoned</summary>
        {rest.join(' ')}
      </details>
    </>
  );
}

function AdvicePiece({ piece, plantId }: { piece: Advice; plantId: string }) {
  const rows = [
    ['Where', piece.where],
    ['How much', piece.howMuch],
    ['Why', reason(piece.why)],
    ['How sure', SURENESS_WORDS[piece.sureness]],
  ] as const;
  return (
    <li className={styles.piece} data-urgency={piece.urgency}>
      <div className={styles.head}>
        <Icon name={piece.kind} size={28} />
        <h3 className={styles.what}>{piece.what}</h3>
        <NeedMark urgency={piece.urgency} />
      </div>
      <dl className={styles.rows}>
        {rows.map(
          ([name, words]) =>
            words && (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{words}</dd>
              </div>
            ),
        )}
      </dl>
      {piece.kind === 'shorten' && (
        <div className={`${buttons.row} ${styles.way}`}>
          <Link href={`/plants/${plantId}/cut-list`} className={buttons.button}>
            <Icon name="list" /> Open the cut list
          </Link>
        </div>
      )}
      {piece.caution && (
        <p className={styles.caution}>
          <b>Take care.</b> {piece.caution}
        </p>
      )}
    </li>
  );
}
