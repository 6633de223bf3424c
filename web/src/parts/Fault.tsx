import buttons from './buttons.module.css';
import styles from './Fault.module.css';
import { Icon } from './Icon.tsx';

/** What went wrong, in the words it came with, and a way to try again. */
export function Fault({ fault, onAgain }: { fault: unknown; onAgain?: () => void }) {
  return (
    <div role="alert" className={styles.fault}>
      <p>{fault instanceof Error ? fault.message : 'Something went wrong. Try again.'}</p>
      {onAgain && (
        <button type="button" className={buttons.quiet} onClick={onAgain}>
          <Icon name="again" /> Try again
        </button>
      )}
    </div>
  );
}
