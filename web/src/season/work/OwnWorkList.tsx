import type { Day } from '../../../../core/day/day.ts';
import type { OwnWorkRow } from '../../../../server/schemas/work.ts';
import { removeOwnWork } from '../../api/season.ts';
import buttons from '../../parts/buttons.module.css';
import { Fault } from '../../parts/Fault.tsx';
import { Icon } from '../../parts/Icon.tsx';
import { useSending } from '../../parts/use-sending.ts';
import { dayWords } from '../../words/day-words.ts';
import { countWords } from '../../words/plant-words.ts';
import styles from './PlantWork.module.css';

/** The work that the grower has set, as it was set. */
export function OwnWorkList({
  ownWork,
  today,
  onChange,
}: {
  ownWork: readonly OwnWorkRow[];
  today: Day;
  onChange: (own: OwnWorkRow) => void;
}) {
  const { busy, fault, send } = useSending();
  if (ownWork.length === 0) return null;
  return (
    <details className={styles.fold}>
      <summary>Your own: {ownWork.length}</summary>
      {fault !== null && <Fault fault={fault} />}
      <ul className={styles.rows}>
        {ownWork.map((own) => (
          <li key={own.id} className={styles.settled}>
            <p>
              {own.text} <span className={styles.sub}>{roundWords(own, today)}</span>
            </p>
            <span className={styles.pair}>
              <button type="button" className={buttons.icon} onClick={() => onChange(own)}>
                <Icon name="edit" />
                <span className="only-heard">Change: {own.text}</span>
              </button>
              <button
                type="button"
                className={buttons.icon}
                disabled={busy}
                onClick={() => send(() => removeOwnWork(own))}
              >
                <Icon name="remove" />
                <span className="only-heard">Remove: {own.text}</span>
              </button>
            </span>
          </li>
        ))}
      </ul>
    </details>
  );
}

function roundWords({ day, everyDays, untilDay }: OwnWorkRow, today: Day): string {
  const until = untilDay === null ? '' : ` until ${dayWords(untilDay, today)}`;
  if (everyDays === null) return `On ${dayWords(day, today)}${until}.`;
  return `Every ${countWords(everyDays, 'day')} from ${dayWords(day, today)}${until}.`;
}
