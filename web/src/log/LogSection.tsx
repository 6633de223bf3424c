import { useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import type { SheetName } from '../plant/PlantSheets.tsx';
import { LogRow } from './LogRow.tsx';
import styles from './LogSection.module.css';
import { LogTaps } from './LogTaps.tsx';
import { logLines } from './log-lines.ts';

/** So many lines stand open; the rest is folded away. */
const SHOWN = 8;

/** The plant's log: what was done and seen, written with one tap, stops and turns among it, newest first. */
export function LogSection({ page, onOpen }: { page: PlantPage; onOpen: (sheet: SheetName) => void }) {
  const [unfolded, unfold] = useState(false);
  const lines = logLines(page);
  const shown = unfolded ? lines : lines.slice(0, SHOWN);
  return (
    <section aria-labelledby="log-name" className={styles.section}>
      <h2 id="log-name">Log</h2>
      <LogTaps page={page} onOpen={onOpen} />
      <div className={buttons.row}>
        <button
          type="button"
          className={buttons.quiet}
          onClick={() => onOpen({ name: 'entry', kind: 'stops', entry: null })}
        >
          <Icon name="shorten" /> Write down a stop
        </button>
        <button
          type="button"
          className={buttons.quiet}
          onClick={() => onOpen({ name: 'entry', kind: 'notes', entry: null })}
        >
          <Icon name="edit" /> Write it in words
        </button>
      </div>
      {lines.length === 0 && <p className={styles.none}>Nothing is written down yet.</p>}
      <ul className={styles.list} aria-label="The log, newest first">
        {shown.map((line) => (
          <LogRow key={line.entry.id} line={line} page={page} onOpen={onOpen} />
        ))}
      </ul>
      {lines.length > shown.length && (
        <button type="button" className={buttons.quiet} onClick={() => unfold(true)}>
          Show the {lines.length - shown.length} earlier ones
        </button>
      )}
    </section>
  );
}
