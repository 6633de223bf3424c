import type { CutList } from '../../../server/schemas/cuts.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import styles from './PrintedList.module.css';
import { type ScoreReading, scoreChanges } from './score-changes.ts';

/** The scores now and after the chosen cuts, on paper. */
export function PrintedScores({ list }: { list: CutList }) {
  return (
    <table className={styles.scores}>
      <thead>
        <tr>
          <td />
          <th scope="col">Now</th>
          <th scope="col">After the chosen cuts</th>
        </tr>
      </thead>
      <tbody>
        {scoreChanges(list).map(({ measure, before, after }) => (
          <tr key={measure}>
            <th scope="row">{MEASURE_NAMES[measure]}</th>
            <td>{words(before)}</td>
            <td className={styles.strong}>{words(after)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function words(reading: ScoreReading | null): string {
  if (reading === null) return 'not known';
  const { figure, plusMinus, unit, aside } = reading;
  return [figure, plusMinus, unit, aside].filter(Boolean).join(' ');
}
