import { useState } from 'react';
import buttons from './buttons.module.css';
import { Icon } from './Icon.tsx';
import styles from './UndoBar.module.css';
import { takeBack, type UndoOffer, undoOffer } from './undo.ts';

/** Says what was just done and takes it back. It stays until it is used, closed, or something newer comes. */
export function UndoBar() {
  const offer = undoOffer.useValue();
  const [busy, setBusy] = useState(false);

  async function press(pressed: UndoOffer) {
    setBusy(true);
    await takeBack(pressed);
    setBusy(false);
  }

  return (
    <div role="status" className={styles.place} data-telling={offer ? true : undefined}>
      {offer && (
        <div className={styles.bar}>
          <span className={styles.words}>{offer.words}</span>
          {offer.undo && (
            <button type="button" className={styles.undo} disabled={busy} onClick={() => press(offer)}>
              <Icon name="undo" /> Undo
            </button>
          )}
          <button
            type="button"
            className={`${buttons.icon} ${styles.close}`}
            aria-label="Close this message"
            onClick={() => undoOffer.write(null)}
          >
            <Icon name="close" />
          </button>
        </div>
      )}
    </div>
  );
}
