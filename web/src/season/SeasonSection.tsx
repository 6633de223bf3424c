import { useQuery } from '@tanstack/react-query';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { plantSeasonQuery } from '../api/season.ts';
import { Fault } from '../parts/Fault.tsx';
import type { SheetName } from '../plant/PlantSheets.tsx';
import { SeasonPicture } from './plan/SeasonPicture.tsx';
import styles from './SeasonSection.module.css';
import { ShowLines } from './ShowLines.tsx';
import { PlantWork } from './work/PlantWork.tsx';

/** The plant's way to its show: the stops planned back from the day, the bloom once it is seen, what the plan rests on, and the work of these weeks. */
export default function SeasonSection({
  page,
  onOpen,
}: {
  page: PlantPage;
  onOpen: (sheet: SheetName) => void;
}) {
  const { plant } = page;
  const { data: season, error, refetch } = useQuery(plantSeasonQuery(plant.id));
  return (
    <>
      <section aria-labelledby="season-name" className={styles.section}>
        <h2 id="season-name">Season</h2>
        {error && <Fault fault={error} onAgain={() => refetch()} />}
        {!season && !error && <p className={styles.sub}>Fetching the season…</p>}
        {season && (
          <>
            <ShowLines plant={plant} season={season} />
            {season.planWhyNot !== null && <p>{season.planWhyNot}</p>}
            <SeasonPicture page={page} season={season} onOpen={onOpen} />
          </>
        )}
      </section>
      {season && <PlantWork page={page} season={season} onOpen={onOpen} />}
    </>
  );
}
