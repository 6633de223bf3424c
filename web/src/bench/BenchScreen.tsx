import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import type { Bench } from '../../../server/schemas/pages.ts';
import { benchQuery } from '../api/queries.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { NeedMark } from '../parts/NeedMark.tsx';
import { benchHeadline, type Urgency, urgencyOfRow } from '../words/need-words.ts';
import { countWords } from '../words/plant-words.ts';
import styles from './BenchScreen.module.css';
import { EmptyBench } from './EmptyBench.tsx';
import { PlantCard } from './PlantCard.tsx';
import { PutAwayPlants } from './PutAwayPlants.tsx';
import { SampleStrip } from './SampleStrip.tsx';
import { StandStrip } from './StandStrip.tsx';

type BenchRow = Bench['plants'][number];

const ORDER: readonly Urgency[] = [3, 2, 1, 0];

/** Which plants need something, the neediest first. */
export function BenchScreen() {
  const { data, error, refetch, isPending } = useQuery(benchQuery);
  if (isPending) return <p className={styles.waiting}>Fetching the bench…</p>;
  if (!data) return <Fault fault={error} onAgain={() => refetch()} />;

  const { plants: rows, putAway: away } = data;
  if (rows.length === 0) return <EmptyBench away={away} />;

  return (
    <>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      <div className={styles.top}>
        <div>
          <h1>{benchHeadline(rows.map(urgencyOfRow))}</h1>
          <p className={styles.count}>{countWords(rows.length, 'plant')} on the bench</p>
        </div>
        <Link href="/plants/new" className={`${buttons.quiet} ${styles.add}`}>
          <Icon name="add" /> Add a plant
        </Link>
      </div>
      <StandStrip />
      {rows.some(({ plant }) => plant.sample) && <SampleStrip />}
      {ORDER.map((urgency) => (
        <NeedGroup
          key={urgency}
          urgency={urgency}
          rows={rows.filter((row) => urgencyOfRow(row) === urgency)}
        />
      ))}
      <PutAwayPlants plants={away} />
    </>
  );
}

function NeedGroup({ urgency, rows }: { urgency: Urgency; rows: readonly BenchRow[] }) {
  if (rows.length === 0) return null;
  return (
    <section className={styles.group}>
      <h2 className={styles.groupName}>
        <NeedMark urgency={urgency} />
      </h2>
      <ul className={styles.cards} data-large={urgency === 3 || undefined}>
        {rows.map((row) => (
          <li key={row.plant.id}>
            <PlantCard row={row} large={urgency === 3} />
          </li>
        ))}
      </ul>
    </section>
  );
}
