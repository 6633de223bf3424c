import type { CutList } from '../../../server/schemas/cuts.ts';
import { MEASURE_NAMES } from '../measures/measure-names.ts';
import styles from './ScoreStrip.module.css';
import { type ScoreChange, type ScoreReading, scoreChanges } from './score-changes.ts';

const SENSE_WORDS = { better: '▲ better', worse: '▼ worse', 'no change': 'no change' } as const;

/** The three scores as they are and as they would be after the chosen cuts; stays in sight over the list. */
export function ScoreStrip({ list, reckoning }: { list: CutList; reckoning: boolean }) {
  return (
    <div className={styles.strip} data-reckoning={reckoning || undefined}>
      <p className={styles.caption}>{list.after ? 'Now → after the chosen cuts' : 'Now'}</p>
      <dl className={styles.scores} aria-label="Before and after the chosen cuts" aria-busy={reckoning}>
        {scoreChanges(list).map((change) => (
          <Score key={change.measure} change={change} />
        ))}
      </dl>
      <p role="status" className="only-heard">
        {reckoning ? 'Reckoning the after anew.' : heard(list)}
      </p>
      {list.afterWhyNot !== null && <p className={styles.whyNot}>{list.afterWhyNot}</p>}
    </div>
  );
}

function Score({ change: { measure, before, after, sense } }: { change: ScoreChange }) {
  const shown = after ?? before;
  return (
    <div className={styles.score} data-testid={`score-${measure}`}>
      <dt>{MEASURE_NAMES[measure]}</dt>
      <dd className={styles.figures}>
        <Figure name="now" reading={before} withUnit={after === null} />
        {after && <Figure name="after" reading={after} withUnit strong />}
      </dd>
      <dd className={styles.aside}>
        {[shown?.aside, sense && SENSE_WORDS[sense]].filter(Boolean).join(', ')}
      </dd>
    </div>
  );
}

function Figure({
  name,
  reading,
  withUnit,
  strong = false,
}: {
  name: string;
  reading: ScoreReading | null;
  /** One unit serves both figures. */
  withUnit: boolean;
  strong?: boolean;
}) {
  return (
    <span className={styles.figure} data-strong={strong || undefined}>
      <b>
        {strong && <span aria-hidden="true">→ </span>}
        <span className="only-heard">{name} </span>
        {reading === null ? 'not known' : reading.figure}
        {withUnit && reading?.unit && ` ${reading.unit}`}
      </b>
      {reading?.plusMinus && <span className={styles.plusMinus}>{reading.plusMinus}</span>}
    </span>
  );
}

function heard(list: CutList): string {
  return scoreChanges(list)
    .flatMap(({ measure, before, after }) =>
      before && after ? [`${MEASURE_NAMES[measure]} ${before.figure} becomes ${after.figure}.`] : [],
    )
    .join(' ');
}
