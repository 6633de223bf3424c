import { Link } from 'wouter';
import type { View } from '../../../server/schemas/sitting.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import styles from './SendingRow.module.css';
import { dropSending, type Sending, sendAgain } from './send-queue.ts';
import { stageWords } from './sending-words.ts';

/** One photo on its way: how far it is, what came out, what to do if it failed. */
export function SendingRow({ sending, view }: { sending: Sending; view: View | null }) {
  const { key, file, stage } = sending;
  const share = stage.at === 'sending' ? stage.share : stage.at === 'waiting' ? 0 : 1;
  const wrong = stage.at === 'failed' || stage.at === 'refused';
  return (
    <li className={styles.row}>
      <p className={styles.file}>{file.name}</p>
      <p className={styles.stage} data-wrong={wrong || undefined} role="status">
        {stageWords(sending, view)}
      </p>
      {(stage.at === 'sending' || stage.at === 'waiting') && (
        <progress className={styles.bar} value={share} aria-label={`${file.name} sent`} />
      )}
      {stage.at === 'known' && <Link href={`/plants/${stage.plantId}`}>See it</Link>}
      {wrong && (
        <div className={buttons.row}>
          {stage.at === 'failed' && (
            <button type="button" className={buttons.quiet} onClick={() => sendAgain(key)}>
              <Icon name="again" /> Send again
            </button>
          )}
          <button type="button" className={buttons.quiet} onClick={() => dropSending(key)}>
            Leave it out
          </button>
        </div>
      )}
    </li>
  );
}
