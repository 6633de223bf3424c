import { type ReactNode, useState } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Layer } from '../photo/layers.ts';
import { todayHere } from '../words/day-words.ts';
import styles from './Condition.module.css';
import { fillLine, leafLine } from './condition-words.ts';
import { FillReading } from './FillReading.tsx';
import { LeafReading } from './LeafReading.tsx';

/** Leaf and gaps, a line each that opens: what stands there, what became of it, and what it is held against. */
export default function ConditionSection({
  page,
  onShow,
}: {
  page: PlantPage;
  /** Shows a photo with one layer drawn on it. */
  onShow: (viewId: string, layer: Layer) => void;
}) {
  const { leaf, fill, plant } = page;
  const today = todayHere();
  if (!leaf && !fill) return null;
  return (
    <section aria-labelledby="condition-name" className={styles.section}>
      <h2 id="condition-name">Leaf and gaps</h2>
      <div>
        {leaf && (
          <Fold name="Leaf" line={leafLine(leaf)}>
            <LeafReading plantId={plant.id} leaf={leaf} today={today} onShow={onShow} />
          </Fold>
        )}
        {fill && (
          <Fold name="Gaps and light" line={fillLine(fill)}>
            <FillReading fill={fill} today={today} onShow={onShow} />
          </Fold>
        )}
      </div>
    </section>
  );
}

function Fold({ name, line, children }: { name: string; line: string; children: ReactNode }) {
  const [open, setOpen] = useState(false);
  return (
    <details className={styles.fold} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span className={styles.name}>{name}</span>
        <span className={styles.line}>{line}</span>
      </summary>
      {open && <div className={styles.body}>{children}</div>}
    </details>
  );
}
