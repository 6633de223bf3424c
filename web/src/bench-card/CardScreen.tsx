import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { plantQuery } from '../api/queries.ts';
import { plantSeasonQuery } from '../api/season.ts';
import type { Days } from '../api/sittings.ts';
import { earlierListed, listedSittings } from '../cut-list/listed-sittings.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { usePaper } from '../parts/use-paper.ts';
import { onDay, usePageWith } from '../plant/use-page-with.ts';
import { BenchCard } from './BenchCard.tsx';
import styles from './CardScreen.module.css';

/** A plant's bench card: what to have on paper beside the pot, on one page of A4 or Letter. */
export default function CardScreen({ plantId }: { plantId: string }) {
  const plant = useQuery(plantQuery(plantId));
  const { page, isPending, fault: olderFault } = usePageWith(plant.data, olderListed(plant.data));
  const season = useQuery(plantSeasonQuery(plantId));
  usePaper('size: portrait; margin: 11mm 12mm');
  const fault = plant.error ?? season.error ?? olderFault;
  const askAgain = () => Promise.all([plant.refetch(), season.refetch()]);
  if (!page || isPending || !season.data) {
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
              <Icon name="back" /> {page.plant.name}
            </Link>
          </p>
          <h1>Bench card</h1>
          <p className={styles.note}>One page of A4 or Letter, to stand beside the pot.</p>
        </div>
        <button type="button" className={buttons.button} onClick={() => window.print()}>
          <Icon name="print" /> Print the card
        </button>
      </header>
      <BenchCard page={page} season={season.data} />
    </div>
  );
}

/** Should none of the newest sittings be measured, the card is made from the newest one before that is. */
function olderListed(page: PlantPage | undefined): Days[] {
  if (page === undefined || listedSittings(page.sittings).length > 0) return [];
  return earlierListed(page.earlier)
    .slice(0, 1)
    .map(({ day }) => onDay(day));
}
