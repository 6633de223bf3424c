import { useEffect, useRef } from 'react';
import type { View } from '../../../server/schemas/sitting.ts';
import { addStrokes } from '../api/mending.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { useSending } from '../parts/use-sending.ts';
import { type UnsureZone, unsureWords } from '../photo/outline-words.ts';
import styles from './PhotoPanel.module.css';

/** What the last tapped thing on the photo is; an unsure zone is asked about at once. */
export function Told({
  plantId,
  view,
  words,
  zone,
  onAnswered,
}: {
  plantId: string;
  view: View;
  words: string;
  zone: UnsureZone | null;
  onAnswered: () => void;
}) {
  const { busy, fault, send } = useSending();
  const place = useRef<HTMLDivElement>(null);
  // On a phone the question may stand under the fold while the finger is still on the photo.
  useEffect(() => {
    if (zone) place.current?.scrollIntoView({ block: 'nearest' });
  }, [zone]);

  async function answer(asked: UnsureZone, isLeaf: boolean) {
    const said = isLeaf ? 'The zone is kept as leaf.' : 'The zone is left out.';
    const change = async () => {
      // Fetched with the first answer, which few visits need.
      const { zoneStrokes } = await import('../mend/zone-dabs.ts');
      await addStrokes(plantId, view, zoneStrokes(asked.outlinePx, isLeaf), said);
    };
    if (await send(change)) onAnswered();
  }

  return (
    <div ref={place} className={styles.told} aria-live="polite">
      <p>{zone ? unsureWords(zone) : words || 'Tap a line or mark on the photo to hear what it is.'}</p>
      {zone && (
        <div className={styles.ask}>
          <b>Is this leaf?</b>
          <button type="button" className={buttons.quiet} disabled={busy} onClick={() => answer(zone, true)}>
            Yes
          </button>
          <button type="button" className={buttons.quiet} disabled={busy} onClick={() => answer(zone, false)}>
            No
          </button>
          {busy && <span>Cutting the outline anew…</span>}
        </div>
      )}
      {fault !== null && <Fault fault={fault} />}
    </div>
  );
}
