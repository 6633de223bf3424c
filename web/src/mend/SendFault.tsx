import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import styles from './MendTools.module.css';

/** Why the strokes did not reach the server, and the two ways on. */
export function SendFault({
  fault,
  onAgain,
  onLeave,
}: {
  fault: unknown;
  onAgain: () => void;
  onLeave: () => void;
}) {
  return (
    <div role="alert" className={styles.fault}>
      <p>{fault instanceof Error ? fault.message : 'Something went wrong. Send them again.'}</p>
      <div className={buttons.row}>
        <button type="button" className={styles.tool} onClick={onAgain}>
          <Icon name="again" /> Send again
        </button>
        <button type="button" className={styles.tool} onClick={onLeave}>
          Leave without sending
        </button>
      </div>
    </div>
  );
}
