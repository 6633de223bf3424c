import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import { standsQuery } from '../api/queries.ts';
import { Fault } from '../parts/Fault.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';
import { PutStandAway } from './PutStandAway.tsx';
import { StandEmptyPhoto } from './StandEmptyPhoto.tsx';
import { StandFacts } from './StandFacts.tsx';
import { StandHistory } from './StandHistory.tsx';
import styles from './StandScreen.module.css';

/** One stand: what is known of it, each with the way to change it, its empty photo and its history. */
export default function StandScreen({ standId }: { standId: string }) {
  const { data: stands, error, refetch, isPending } = useQuery(standsQuery);
  if (isPending) return <p>Fetching the stand…</p>;
  const stand = stands?.find(({ id }) => id === standId);
  if (!stand) {
    return (
      <>
        <Fault fault={error ?? new Error('There is no such stand.')} onAgain={() => refetch()} />
        <p>
          <Link href="/stands">To the stands</Link>
        </p>
      </>
    );
  }
  return (
    <div className={styles.screen}>
      <header className={styles.head}>
        <h1>{stand.name}</h1>
        <p className={styles.soft}>
          As it is since {dayWords(stand.sinceDay, todayHere())} · {standingWords(stand.plants)}
        </p>
      </header>
      <StandFacts stand={stand} />
      <StandEmptyPhoto stand={stand} />
      <StandHistory stand={stand} />
      <PutStandAway stand={stand} />
    </div>
  );
}

function standingWords(plants: number): string {
  if (plants === 0) return 'no plant stands here yet';
  return plants === 1 ? 'one plant stands here' : `${countWords(plants, 'plant')} stand here`;
}
