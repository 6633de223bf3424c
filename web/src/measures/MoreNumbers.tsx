import { lazy, Suspense, useState } from 'react';
import type { PlantKind } from '../../../core/plant.ts';
import type { PhotoReport } from '../../../core/report.ts';
import styles from './ScoreList.module.css';

const ExtrasList = lazy(() => import('./ExtrasList.tsx'));

/** Numbers beside the scores, closed until asked for. */
export function MoreNumbers(props: { report: PhotoReport; before: PhotoReport | null; kind: PlantKind }) {
  const [open, setOpen] = useState(false);
  return (
    <details className={styles.extras} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>More numbers: leaf, flower, gaps, size</summary>
      {open && (
        <Suspense fallback={<p>One moment…</p>}>
          <ExtrasList {...props} />
        </Suspense>
      )}
    </details>
  );
}
