import { useQuery } from '@tanstack/react-query';
import { Link, useSearchParams } from 'wouter';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { cutListQuery, isLater } from '../api/cuts.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { onDay, usePageWith } from '../plant/use-page-with.ts';
import { WithPlant } from '../plant/WithPlant.tsx';
import { CutDesk } from './CutDesk.tsx';
import styles from './CutListScreen.module.css';
import { earlierListed, listedSittings } from './listed-sittings.ts';
import { SittingChoice } from './SittingChoice.tsx';

/** The stems of one sitting to shorten, to be worked through with the plant on the bench. */
export default function CutListScreen({ plantId }: { plantId: string }) {
  return <WithPlant plantId={plantId}>{(page) => <OfPlant page={page} />}</WithPlant>;
}

function OfPlant({ page: known }: { page: PlantPage }) {
  const [search, setSearch] = useSearchParams();
  const named =
    known.earlier.find(({ id }) => id === search.get('sitting')) ??
    (listedSittings(known.sittings).length === 0 ? earlierListed(known.earlier)[0] : undefined);
  const { page, isPending, fault } = usePageWith(known, named ? [onDay(named.day)] : []);
  const { plant } = page;
  const sittings = listedSittings(page.sittings);
  const sitting = sittings.find(({ id }) => id === search.get('sitting')) ?? sittings[0];
  return (
    <div className={styles.screen}>
      <header className={styles.head}>
        <div>
          <p>
            <Link href={`/plants/${plant.id}`} className={styles.back}>
              <Icon name="back" /> {plant.name}
            </Link>
          </p>
          <h1>Cut list</h1>
        </div>
        {sitting && (
          <SittingChoice
            sittings={[...sittings, ...earlierListed(page.earlier)].sort((a, b) => (a.day < b.day ? 1 : -1))}
            chosen={sitting}
            onChoose={(id) => setSearch({ sitting: id }, { replace: true })}
          />
        )}
      </header>
      {fault ? (
        <Fault fault={fault} />
      ) : isPending ? (
        <p className={styles.waiting}>Making the list…</p>
      ) : sitting ? (
        <OfSitting key={sitting.id} page={page} sitting={sitting} newest={sitting === sittings[0]} />
      ) : (
        <NoSitting plantId={plant.id} />
      )}
    </div>
  );
}

function OfSitting({ page, sitting, newest }: { page: PlantPage; sitting: Sitting; newest: boolean }) {
  const { data: list, error, refetch } = useQuery(cutListQuery(page.plant.id, sitting.id));
  if (!list) {
    if (isLater(error)) return <p role="status">{(error as Error).message}</p>;
    if (error) return <Fault fault={error} onAgain={() => refetch()} />;
    return <p className={styles.waiting}>Making the list…</p>;
  }
  return (
    <>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      <CutDesk page={page} sitting={sitting} list={list} newest={newest} />
    </>
  );
}

function NoSitting({ plantId }: { plantId: string }) {
  return (
    <>
      <p>No photo of this plant is measured yet, and the list is made from a measured photo.</p>
      <div className={buttons.row}>
        <Link href={`/plants/${plantId}?add-photos`} className={buttons.button}>
          <Icon name="camera" /> Add a photo
        </Link>
        <Link href={`/plants/${plantId}/turned`} className={buttons.quiet}>
          <Icon name="turn" /> Photograph it from all round
        </Link>
      </div>
    </>
  );
}
