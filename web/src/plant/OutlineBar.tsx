import { useId, useState } from 'react';
import type { View } from '../../../server/schemas/sitting.ts';
import { acceptOutline } from '../api/mending.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { ACCEPT_MEANING, isDoubtful, sureWords } from '../photo/outline-words.ts';
import styles from './OutlineBar.module.css';

/** How sure the outline is, the way to mend it, and the grower's word that it is right. */
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
  const confidence = report?.confidence ?? null;
  const measured = report?.status === 'measured';
  return (
    <section aria-label="Outline" className={styles.bar}>
      {measured && confidence !== null && (
        <p className={styles.sure} data-doubtful={isDoubtful(confidence) || undefined}>
          Outline <b>{sureWords(confidence)}</b>
          {isDoubtful(confidence) && '. Mend it, or see beside the numbers what would help.'}
        </p>
      )}
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
          <button
            type="button"
            className={styles.right}
            aria-pressed={acceptedOutline}
            disabled={busy}
            onClick={() => send(() => acceptOutline(plantId, view.id, !acceptedOutline))}
          >
            <Icon name="keep" /> The outline is right
          </button>
        )}
        {measured && (
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
