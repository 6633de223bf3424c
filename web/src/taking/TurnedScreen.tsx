import { useEffect, useState } from 'react';
import { Link, useSearchParams } from 'wouter';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { sendings, viewIdsOf } from '../photos/sending.ts';
import { daysOfViews } from '../plant/days-asked.ts';
import { onDay, usePageWith } from '../plant/use-page-with.ts';
import { WithPlant } from '../plant/WithPlant.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import { CollarOffer } from './CollarOffer.tsx';
import { CountChoice } from './CountChoice.tsx';
import { NextShot } from './NextShot.tsx';
import { ShotList } from './ShotList.tsx';
import { ShotSheet } from './ShotSheet.tsx';
import { TakingResult } from './TakingResult.tsx';
import styles from './TurnedScreen.module.css';
import { useTaking } from './use-taking.ts';

/** Leads through a turned sitting, shot by shot. */
export default function TurnedScreen({ plantId }: { plantId: string }) {
  return <WithPlant plantId={plantId}>{(page) => <Taking page={page} />}</WithPlant>;
}

function Taking({ page: known }: { page: PlantPage }) {
  const [search, setSearch] = useSearchParams();
  const sent = viewIdsOf(sendings.useValue().filter(({ plantId }) => plantId === known.plant.id));
  const older = known.earlier.find(({ id }) => id === search.get('sitting'));
  const { page } = usePageWith(known, [...(older ? [onDay(older.day)] : []), ...daysOfViews(known, sent)]);
  const asked = search.get('turn');
  const [chosenDeg, choose] = useState<number | null>(asked === null ? null : Number(asked));
  const [correcting, correct] = useState<View | null>(null);
  const worked = search.get('after');
  const taking = useTaking(page, search.get('sitting'), worked);
  const { plan, nextDeg, sitting } = taking;
  const targetDeg = chosenDeg ?? nextDeg;
  const { plant } = page;
  const afterWork = sitting !== null && sitting.id === worked;
  const today = todayHere();
  const named = search.get('sitting');
  useEffect(() => {
    // Today's sitting is found again by itself after a reload; one of another day is kept in the address.
    if (sitting && sitting.day !== today && sitting.id !== named) {
      setSearch({ sitting: sitting.id }, { replace: true });
    }
  }, [sitting, today, named, setSearch]);

  return (
    <div className={styles.screen}>
      <header className={styles.head}>
        <h1>
          {plant.name}, {afterWork ? 'after the work' : 'from all round'}
        </h1>
        <p className={styles.sub}>
          {sitting ? `${dayWords(sitting.day, today)}. ` : ''}The camera stays, the pot turns on its spot.
        </p>
      </header>
      <div className={styles.desk}>
        <NextShot page={page} taking={taking} targetDeg={targetDeg} onChoose={choose} />
        <div className={styles.aside}>
          <ShotList
            plan={plan}
            onTheirWay={taking.onTheirWay}
            targetDeg={targetDeg}
            onChoose={choose}
            onCorrect={correct}
          />
          <TakingResult plantId={plant.id} taking={taking} />
          <CountChoice />
          <CollarOffer plant={plant} />
          <div className={buttons.row}>
            <Link href={`/plants/${plant.id}`} className={buttons.quiet}>
              <Icon name="back" /> To {plant.name}
            </Link>
          </div>
        </div>
      </div>
      {correcting && <ShotSheet plantId={plant.id} view={correcting} onClose={() => correct(null)} />}
    </div>
  );
}
