import buttons from '../parts/buttons.module.css';
import { countWords } from '../words/plant-words.ts';
import { isUnsent, sendings } from './send-queue.ts';
import styles from './UnsentStrip.module.css';

/** Says that photos of this plant are still on their way or stuck, wherever the dialog has gone. */
export function UnsentStrip({ plantId, onOpen }: { plantId: string; onOpen: () => void }) {
  const unsent = sendings.useValue().filter((one) => one.plantId === plantId && isUnsent(one));
  if (unsent.length === 0) return null;
  const stuck = unsent.filter(({ stage }) => stage.at === 'failed').length;
  return (
    <div className={styles.strip} role="status">
      <p>
        {stuck > 0
          ? `${countWords(stuck, 'photo')} could not be sent. Keep this page open and send again.`
          : `${countWords(unsent.length, 'photo')} on the way.`}
      </p>
      <button type="button" className={buttons.quiet} onClick={onOpen}>
        See the photos
      </button>
    </div>
  );
}
