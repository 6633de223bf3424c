import { useQuery } from '@tanstack/react-query';
import { lazy, Suspense } from 'react';
import { answersFrom } from '../api/last-answers.ts';
import { benchQuery, standsQuery } from '../api/queries.ts';
import { Fault } from '../parts/Fault.tsx';
import { sendings } from '../photos/sending.ts';
import { BenchDesk } from './BenchDesk.tsx';
import styles from './BenchScreen.module.css';
import { needGroups } from './need-groups.ts';

const AsOf = lazy(() => import('../parts/AsOf.tsx'));
const UnsentStrip = lazy(() => import('../photos/UnsentStrip.tsx'));
const EmptyBench = lazy(() => import('./EmptyBench.tsx'));
const LargeBench = lazy(() => import('./order/LargeBench.tsx'));

/** So many plants are seen at a glance, and need no tools to be found. */
const AT_A_GLANCE = 8;

/** The photos that still wait on this device, then which plants need something. */
export function BenchScreen() {
  const photos = sendings.useValue();
  const isOfBefore = answersFrom.useValue().has('/bench');
  return (
    <>
      <Suspense fallback={null}>{isOfBefore && <AsOf path="/bench" />}</Suspense>
      <Suspense fallback={null}>{photos.length > 0 && <UnsentStrip />}</Suspense>
      <Plants />
    </>
  );
}

/** The neediest first. */
function Plants() {
  const { data, error, refetch, isPending } = useQuery(benchQuery);
  // Whether a stand is asked for must be known before the plants are drawn, or they would move under the thumb.
  const { isPending: isStandOpen } = useQuery(standsQuery);
  if (isPending || isStandOpen) return <p className={styles.waiting}>Fetching the bench…</p>;
  if (!data) return <Fault fault={error} onAgain={() => refetch()} />;
  const { plants } = data;
  if (plants.length === 0) {
    return (
      <Suspense fallback={<p className={styles.waiting}>Fetching the bench…</p>}>
        <EmptyBench away={data.putAway} />
      </Suspense>
    );
  }
  return (
    <>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      {plants.length > AT_A_GLANCE ? (
        <Suspense fallback={<p className={styles.waiting}>Fetching the bench…</p>}>
          <LargeBench bench={data} />
        </Suspense>
      ) : (
        <BenchDesk bench={data} shown={plants} groups={needGroups(plants)} />
      )}
    </>
  );
}
