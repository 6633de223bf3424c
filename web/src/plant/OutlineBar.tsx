import { useId, useState } from 'react';
import type { View } from '../../../server/schemas/sitting.ts';
import { acceptOutline } from '../api/mending.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { ACCEPT_MEANING } from '../photo/outline-words.ts';
import styles from './OutlineBar.module.css';

/** The ways to mend the outline and the rim, and the grower's word that the outline is right. */
export function OutlineBar({
  plantId,
  view,
  onMend,
  onRim,
}: {
  plantId: string;
  view: View;
  onMend: () => void;
  onRim: () => void;
}) {
  const { busy, fault, send } = useSending();
  const [asked, setAsked] = useState(false);
  const meaningId = useId();
  const { report, acceptedOutline } = view;
  const measured = report?.status === 'measured';
  return (
    <section aria-label="Outline" className={styles.bar}>
      <div className={styles.ways}>
        <button type="button" className={buttons.quiet} onClick={onMend}>
          <Icon name="mend" /> Mend the outline
        </button>
        {measured && (
          <button type="button" className={buttons.quiet} onClick={onRim}>
            <Icon name="pot" /> Set rim and axis
          </button>
        )}
        {measured && (
          <span className={styles.accept}>
            <button
              type="button"
              className={styles.right}
              aria-pressed={acceptedOutline}
              disabled={busy}
              onClick={() => send(() => acceptOutline(plantId, view.id, !acceptedOutline))}
            >
              <Icon name="keep" /> The outline is right
            </button>
            <button
              type="button"
              className={`${buttons.quiet} ${styles.ask}`}
              aria-label="What “The outline is right” does"
              aria-expanded={asked}
              aria-controls={meaningId}
              onClick={() => setAsked(!asked)}
            >
              ?
            </button>
          </span>
        )}
      </div>
      {measured && asked && (
        <p id={meaningId} className={styles.meaning}>
          {ACCEPT_MEANING}
        </p>
      )}
      {fault !== null && <Fault fault={fault} />}
    </section>
  );
}
