import styles from './Definition.module.css';
import { EXTRA_MEANINGS, type ExtraMeasure } from './extra-readings.ts';
import { MEANINGS, type Meaning, PLUS_MINUS_UNKNOWN } from './meanings.ts';
import type { Measure } from './reading.ts';

/** What a number means, how it is measured, its unit and range, where it leans, and by whose rule. */
export default function Definition({
  measure,
  plusMinusKnown,
}: {
  measure: Measure | ExtraMeasure;
  plusMinusKnown: boolean;
}) {
  const meaning: Meaning =
    measure in MEANINGS ? MEANINGS[measure as Measure] : EXTRA_MEANINGS[measure as ExtraMeasure];
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
