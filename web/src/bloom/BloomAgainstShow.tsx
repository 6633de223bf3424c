import type { Day } from '../../../core/day/day.ts';
import { writeInLog } from '../api/log.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './BloomSeen.module.css';
import { TAKEN_OFF, type ToldBloom } from './bloom-words.ts';

/** How the bloom comes out for the show, and what growers do then; heads taken off are written down with one tap. */
export function BloomAgainstShow({
  plantId,
  against,
  today,
}: {
  plantId: string;
  against: NonNullable<ToldBloom['againstShow']>;
  today: Day;
}) {
  const { busy, fault, send } = useSending();
  const { verdict, words, takeOffUntil } = against;
  const write = () =>
    send(() => writeInLog(plantId, { day: today, kind: 'bloom-taken-off' }, TAKEN_OFF.written));
  return (
    <div className={styles.show} data-verdict={verdict}>
      <p>{words}</p>
      {takeOffUntil !== null && (
        <>
          <p className={styles.sub}>{against.standing}</p>
          <div className={buttons.row}>
            <button type="button" className={buttons.quiet} disabled={busy} onClick={write}>
              <Icon name="bloom" /> {TAKEN_OFF.button}
            </button>
          </div>
        </>
      )}
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
