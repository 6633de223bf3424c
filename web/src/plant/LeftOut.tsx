import type { Sitting } from '../../../server/schemas/sitting.ts';
import { leaveSittingOut } from '../api/log.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './PhotoTrouble.module.css';

/** Says plainly that a sitting is left out, and takes it in again with one tap. */
export function LeftOut({ sitting }: { sitting: Sitting }) {
  const { busy, fault, send } = useSending();
  if (sitting.leftOut === null) return null;
  return (
    <div className={styles.trouble} role="status">
      <p>
        <b>This sitting is left out of trend and advice:</b> {sitting.leftOut}. Its photos are kept.
      </p>
      <button
        type="button"
        className={buttons.quiet}
        disabled={busy}
        onClick={() => send(() => leaveSittingOut(sitting, null))}
      >
        <Icon name="undo" /> Take it in again
      </button>
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
