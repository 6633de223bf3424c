import { lazy, Suspense, useState } from 'react';
import type { PhotoReport } from '../../../core/report.ts';
import styles from './ScoreList.module.css';

const ExtrasList = lazy(() => import('./ExtrasList.tsx'));

/** The extras, closed until asked for. */
export function MoreNumbers({ report }: { report: PhotoReport }) {
  const [open, setOpen] = useState(false);
  if (!report.extras) return null;
  return (
    <details className={styles.extras} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>More numbers</summary>
      {open && (
        <Suspense fallback={<p>One moment…</p>}>
          <p className={styles.sub}>
            Other ways in use to say how round and upright. No advice rests on them.
          </p>
          <ExtrasList report={report} />
        </Suspense>
      )}
    </details>
  );
}
