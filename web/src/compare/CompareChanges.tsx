import type { PhotoReport } from '../../../core/report.ts';
import { changeSince } from '../measures/change.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import { MEASURES, numberWords, plusMinusWords, readMeasure } from '../measures/reading.ts';
import styles from './CompareSheet.module.css';

const SENSE_MARKS = { better: '▲ better, ', worse: '▼ worse, ', neither: '' } as const;

/** What became of each measure from the earlier photo to the later one. */
export function CompareChanges({
  earlier,
  later,
  days,
}: {
  earlier: PhotoReport | null;
  later: PhotoReport | null;
  /** How the two days are called, earlier first. */
  days: readonly [string, string];
}) {
  if (earlier?.status !== 'measured' || later?.status !== 'measured') {
    return <p>One of the two is not measured, so no numbers are compared.</p>;
  }
  const aside = [earlier, later].flatMap(({ notCompared }) => notCompared ?? []);
  if (aside.length > 0) return <p>The numbers are not compared: {aside[0]}</p>;
  const rows = MEASURES.flatMap((measure) => {
    const change = changeSince(later, earlier, measure);
    return change === null ? [] : [{ measure, change }];
  });
  return (
    <table className={styles.changes}>
      <caption className="only-heard">
        What changed from {days[0]} to {days[1]}
      </caption>
      <thead>
        <tr>
          <th scope="col">Measure</th>
          <th scope="col">{days[0]}</th>
          <th scope="col">{days[1]}</th>
          <th scope="col">Change</th>
        </tr>
      </thead>
      <tbody>
        {rows.map(({ measure, change }) => (
          <tr key={measure}>
            <th scope="row">{MEASURE_NAMES[measure]}</th>
            <td>{reading(earlier, measure)}</td>
            <td>{reading(later, measure)}</td>
            <td>
              {SENSE_MARKS[change.sense]}
              {change.words}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function reading(report: PhotoReport, measure: (typeof MEASURES)[number]): string {
  const { value, plusMinus } = readMeasure(report, measure);
  if (value === null) return 'not known';
  return [numberWords(value, measure), plusMinusWords(plusMinus)].filter(Boolean).join(' ');
}
