import { Link } from 'wouter';
import type { View } from '../../../server/schemas/sitting.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import styles from './SendingRow.module.css';
import { dropSending, sendAgain } from './send-queue.ts';
import type { Sending } from './sending.ts';
import { stageWords } from './sending-words.ts';

/** One photo on its way: how far it is, what came out, what to do if it failed. */
export function SendingRow({ sending, view }: { sending: Sending; view: View | null }) {
  const { key, fileName, stage } = sending;
  const isAhead = stage.at === 'keeping' || stage.at === 'waiting';
  const share = stage.at === 'sending' ? stage.share : isAhead ? 0 : 1;
  const stuck = stage.at === 'failed' || stage.at === 'refused';
  const wrong = stuck && !(stage.at === 'failed' && stage.byItself);
  return (
    <li className={styles.row}>
      <p className={styles.file} translate="no">
        {fileName}
      </p>
      <p className={styles.stage} data-wrong={wrong || undefined} role="status">
        {stageWords(sending, view)}
      </p>
      {(stage.at === 'sending' || isAhead) && (
        <progress className={styles.bar} value={share} aria-label={`${fileName} sent`} />
      )}
      {stage.at === 'known' && <Link href={`/plants/${stage.plantId}`}>See it</Link>}
      {stuck && (
        <div className={buttons.row}>
          {stage.at === 'failed' && (
            <button type="button" className={buttons.quiet} onClick={() => sendAgain(key)}>
              <Icon name="again" /> {stage.byItself ? 'Send now' : 'Send again'}
            </button>
          )}
          <button type="button" className={buttons.quiet} onClick={() => void dropSending(key)}>
            Leave it out
          </button>
        </div>
      )}
    </li>
  );
}
