import { useQuery } from '@tanstack/react-query';
import { lazy, Suspense, useState } from 'react';
import { Link } from 'wouter';
import type { Bench } from '../../../server/schemas/pages.ts';
import { benchQuery } from '../api/queries.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { benchHeadline, urgencyOfRow } from '../words/need-words.ts';
import { countWords } from '../words/plant-words.ts';
import { BenchPlants } from './BenchPlants.tsx';
import styles from './BenchScreen.module.css';
import { EmptyBench } from './EmptyBench.tsx';
import { shownRows } from './order/bench-order.ts';
import { useBenchView } from './order/use-bench-view.ts';
import { useShowNames } from './order/use-show-names.ts';
import { PutAwayPlants } from './PutAwayPlants.tsx';
import { SampleStrip } from './SampleStrip.tsx';
import { StandStrip } from './StandStrip.tsx';
import { isWantedNow } from './work/work-groups.ts';

const WorkList = lazy(() => import('./work/WorkList.tsx'));
const BenchTools = lazy(() => import('./order/BenchTools.tsx'));
const ManyBar = lazy(() => import('./many/ManyBar.tsx'));

/** So many plants are seen at a glance, and need no tools to be found. */
const AT_A_GLANCE = 8;

/** Which plants need something, the neediest first. */
export function BenchScreen() {
  const { data, error, refetch, isPending } = useQuery(benchQuery);
  if (isPending) return <p className={styles.waiting}>Fetching the bench…</p>;
  if (!data) return <Fault fault={error} onAgain={() => refetch()} />;
  if (data.plants.length === 0) return <EmptyBench away={data.putAway} />;
  return (
    <>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      <LaidBench bench={data} />
    </>
  );
}

function LaidBench({ bench: { plants: rows, putAway: away } }: { bench: Bench }) {
  const [view, changeView] = useBenchView();
  const [chosen, choose] = useState<ReadonlySet<string> | null>(null);
  const hasTools = rows.length > AT_A_GLANCE;
  const showNames = useShowNames(rows, hasTools);
  const shown = hasTools ? shownRows(rows, view) : rows;
  const worked = rows.filter(({ work }) => work.some(isWantedNow)).length;
  return (
    <>
      <div className={styles.top}>
        <div>
          <h1>{benchHeadline(rows.map(urgencyOfRow), worked)}</h1>
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
      <StandStrip />
      {rows.some(({ plant }) => plant.sample) && <SampleStrip />}
      <Suspense fallback={null}>
        {hasTools && <BenchTools rows={rows} view={view} showNames={showNames} onChange={changeView} />}
        {chosen !== null && (
          <ManyBar rows={shown} chosen={chosen} onChoose={choose} onClose={() => choose(null)} />
        )}
        {/* While plants are chosen they stand at the top. */}
        {chosen === null && <WorkList rows={shown} />}
      </Suspense>
      {shown.length === 0 && <p className={styles.waiting}>No plant on the bench is like that.</p>}
      <BenchPlants
        rows={shown}
        order={hasTools ? view.order : 'need'}
        close={hasTools}
        showNames={showNames}
        chosen={chosen}
        onChoose={choose}
      />
      <PutAwayPlants plants={away} />
    </>
  );
}
