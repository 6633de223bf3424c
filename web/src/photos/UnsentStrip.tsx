import { momentWords } from '../parts/AsOf.tsx';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { countWords } from '../words/plant-words.ts';
import { dropSending, sendAgain, sendNow } from './send-queue.ts';
import { isUnsent, notKeeping, type Sending, sendings } from './sending.ts';
import { holdUpWords, stageWords } from './sending-words.ts';
import styles from './UnsentStrip.module.css';
import { WaitingPicture } from './WaitingPicture.tsx';

/** So many photos are shown at once; more are folded. */
const AT_A_GLANCE = 3;

/** The photos that wait on this device: of one plant, or of all without `plantId`. Nothing when none waits. */
export default function UnsentStrip({ plantId = null }: { plantId?: string | null }) {
  const unsent = sendings.useValue().filter((one) => isUnsent(one) && plantId === (plantId && one.plantId));
  const warning = notKeeping.useValue();
  if (unsent.length === 0) return null;
  const goes = unsent.filter(({ stage }) => stage.at !== 'refused');
  return (
    <section className={styles.strip} aria-label="Photos that wait on this device">
      <div className={styles.head}>
        <p role="status">{headWords(unsent)}</p>
        {goes.length > 0 && (
          <button type="button" className={buttons.quiet} onClick={() => void sendNow()}>
            <Icon name="again" /> Send now
          </button>
        )}
      </div>
      {warning && <p className={styles.warning}>{warning}</p>}
      <details open={unsent.length <= AT_A_GLANCE}>
        <summary>{unsent.length === 1 ? 'The photo' : 'The photos'}</summary>
        <ul className={styles.list}>
          {unsent.map((sending) => (
            <WaitingRow key={sending.key} sending={sending} />
          ))}
        </ul>
      </details>
    </section>
  );
}

function WaitingRow({ sending }: { sending: Sending }) {
  const { key, plantName, fileName, chosenAtMs, stage } = sending;
  const stuck = stage.at === 'refused' || (stage.at === 'failed' && !stage.byItself);
  return (
    <li className={styles.row}>
      <WaitingPicture sending={sending} />
      <div className={styles.words}>
        <p className={styles.plant} translate="no">
          {plantName}
        </p>
        <p className={styles.since}>Since {momentWords(chosenAtMs)}</p>
        {/* What holds all of them up is said once, above. */}
        {(stuck || stage.at === 'sending') && (
          <p className={styles.stage} data-wrong={stuck || undefined}>
            {stageWords(sending, null)}
          </p>
        )}
      </div>
      <div className={styles.acts}>
        {stage.at === 'failed' && stuck && (
          <button type="button" className={buttons.quiet} onClick={() => sendAgain(key)}>
            Send again
          </button>
        )}
        {stage.at !== 'sending' && (
          <button
            type="button"
            className={buttons.quiet}
            aria-label={`Drop ${fileName} of ${plantName}`}
            onClick={() => void dropSending(key)}
          >
            Drop
          </button>
        )}
      </div>
    </li>
  );
}

function headWords(unsent: readonly Sending[]): string {
  const held = unsent.flatMap(({ stage }) => (stage.at === 'failed' && stage.byItself ? [stage.detail] : []));
  const going = unsent.filter(({ stage }) => stage.at !== 'refused');
  if (going.length === 0) return `${countWords(unsent.length, 'photo')} could not be taken in.`;
  if (held[0] !== undefined) {
    const waits = countWords(
      going.length,
      'photo waits on this device and goes by itself',
      'photos wait on this device and go by themselves',
    );
    return `${waits}. ${holdUpWords(held[0])}`;
  }
  return `${countWords(going.length, 'photo')} on the way.`;
}
