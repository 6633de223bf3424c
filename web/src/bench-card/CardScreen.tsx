import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import { plantQuery } from '../api/queries.ts';
import { plantSeasonQuery } from '../api/season.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { usePaper } from '../parts/use-paper.ts';
import { BenchCard } from './BenchCard.tsx';
import styles from './CardScreen.module.css';

/** A plant's bench card: what to have on paper beside the pot, on one page of A4 or Letter. */
export default function CardScreen({ plantId }: { plantId: string }) {
  const page = useQuery(plantQuery(plantId));
  const season = useQuery(plantSeasonQuery(plantId));
  usePaper('size: portrait; margin: 11mm 12mm');
  const fault = page.error ?? season.error;
  const askAgain = () => Promise.all([page.refetch(), season.refetch()]);
  if (!page.data || !season.data) {
    if (fault) return <Fault fault={fault} onAgain={askAgain} />;
    return <p className={styles.waiting}>Fetching the plant…</p>;
  }
  return (
    <div className={styles.screen}>
      {fault && <Fault fault={fault} onAgain={askAgain} />}
      <header className={styles.head}>
        <div>
          <p>
            <Link href={`/plants/${plantId}`} className={styles.back}>
              <Icon name="back" /> {page.data.plant.name}
            </Link>
          </p>
          <h1>Bench card</h1>
          <p className={styles.note}>One page of A4 or Letter, to stand beside the pot.</p>
        </div>
        <button type="button" className={buttons.button} onClick={() => window.print()}>
          <Icon name="print" /> Print the card
        </button>
      </header>
      <BenchCard page={page.data} season={season.data} />
    </div>
  );
}
