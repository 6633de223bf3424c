import { type ComponentType, lazy, type ReactNode, Suspense, useRef, useState } from 'react';
import { Link } from 'wouter';
import type { Bench } from '../../../server/schemas/pages.ts';
import { BloomsUnderWay } from '../parts/BloomsUnderWay.tsx';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { benchHeadline, urgencyOfRow } from '../words/need-words.ts';
import { countWords } from '../words/plant-words.ts';
import { BenchPlants } from './BenchPlants.tsx';
import styles from './BenchScreen.module.css';
import type { BenchRow, RowGroup } from './need-groups.ts';
import type { PlantLine } from './PlantRow.tsx';
import { PutAwayPlants } from './PutAwayPlants.tsx';
import { SampleStrip } from './SampleStrip.tsx';
import { StandStrip } from './StandStrip.tsx';
import { isWantedNow } from './work/is-wanted-now.ts';
import { WorkList } from './work/WorkList.tsx';

const ManyBar = lazy(() => import('./many/ManyBar.tsx'));

/** A bench laid out: how it stands, the day's work, the plants; or what is done to many at once. */
export function BenchDesk({
  bench: { plants: rows, putAway: away },
  shown,
  groups,
  tools = null,
  Line = null,
}: {
  bench: Bench;
  /** The plants in sight, in `groups` under their headings. */
  shown: readonly BenchRow[];
  groups: readonly RowGroup[];
  tools?: ReactNode;
  /** How a plant is shown among many; cards without it. */
  Line?: ComponentType<PlantLine> | null;
}) {
  const [chosen, choose] = useState<ReadonlySet<string> | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  const finish = () => {
    choose(null);
    heading.current?.focus();
  };
  const worked = rows.filter(({ work }) => work.some(isWantedNow)).length;
  return (
    <>
      <div className={styles.top}>
        <div>
          <h1 ref={heading} tabIndex={-1} className={styles.headline}>
            {benchHeadline(rows.map(urgencyOfRow), worked)}
          </h1>
          <p className={styles.count}>{countWords(rows.length, 'plant')} on the bench</p>
        </div>
        <div className={styles.acts}>
          {rows.length > 1 && chosen === null && (
            <button type="button" className={buttons.quiet} onClick={() => choose(new Set())}>
              <Icon name="many" /> Choose many
            </button>
          )}
          <Link href="/plants/new" className={`${buttons.quiet} ${styles.add}`}>
            <Icon name="add" /> Add a plant
          </Link>
        </div>
      </div>
      <BloomsUnderWay rows={rows} />
      <StandStrip />
      {rows.some(({ plant }) => plant.sample) && <SampleStrip />}
      {tools}
      <Suspense fallback={null}>
        {/* While plants are chosen they stand at the top. */}
        {chosen === null ? (
          <WorkList rows={shown} />
        ) : (
          <ManyBar rows={shown} chosen={chosen} onChoose={choose} onClose={finish} />
        )}
      </Suspense>
      {shown.length === 0 && <p className={styles.waiting}>No plant on the bench is like that.</p>}
      <BenchPlants groups={groups} Line={Line} chosen={chosen} onChoose={choose} />
      <PutAwayPlants plants={away} />
    </>
  );
}
