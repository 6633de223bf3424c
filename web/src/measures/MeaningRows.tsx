import type { ReactNode } from 'react';
import styles from './Definition.module.css';
import { type Meaning, PLUS_MINUS_UNKNOWN } from './meanings.ts';

/** What a number means, how it is measured, its unit and range, where it leans, and by whose rule. */
export function MeaningRows({
  meaning,
  plusMinusKnown,
  children,
}: {
  meaning: Meaning;
  plusMinusKnown: boolean;
  /** Stands after the first words: a picture. */
  children?: ReactNode;
}) {
  const rows = [
    ['How it is measured', `${meaning.measured} ${meaning.best}`],
    ['Unit and range', meaning.range],
    ['Where it leans', meaning.bias],
    ['Plus-minus', plusMinusKnown ? meaning.plusMinus : PLUS_MINUS_UNKNOWN],
    ['Source', meaning.source],
  ] as const;
  return (
    <div className={styles.definition}>
      <p>{meaning.says}</p>
      {children}
      <dl>
        {rows.map(([name, words]) => (
          <div key={name}>
            <dt>{name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </div>
  );
}
