import { putSampleAway } from '../api/plants.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { useSending } from '../parts/use-sending.ts';
import styles from './SampleStrip.module.css';

/** Says which plants are invented, and clears them off. */
export function SampleStrip() {
  const { busy, fault, send } = useSending();
  return (
    <div className={styles.strip}>
      <p>
        <b>Samples</b> are drawn. <span>Look round with them until your own plants come.</span>
      </p>
      <button type="button" className={buttons.quiet} disabled={busy} onClick={() => send(putSampleAway)}>
        Put the sample plants away
      </button>
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
