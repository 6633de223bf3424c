import { lazy, Suspense, useState } from 'react';
import { Link } from 'wouter';
import type { Plant } from '../../../server/schemas/plant.ts';
import type { PlantSeasonAnswer } from '../../../server/schemas/season.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import styles from './SeasonSection.module.css';
import { ShowLine } from './ShowLine.tsx';

const EntrySheet = lazy(() => import('../shows/EntrySheet.tsx'));
const EnterForShowSheet = lazy(() => import('./EnterForShowSheet.tsx'));

type EntryAnswer = PlantSeasonAnswer['entries'][number];

/** Shows that are over are of use on this page while they still want their result, and a month on. */
const SHOWN_WHEN_OVER = 1;

/** The shows that the plant is entered for: the one that rules its stops first. */
export function ShowLines({ plant, season }: { plant: Plant; season: PlantSeasonAnswer }) {
  const [opened, open] = useState<EntryAnswer | 'enter' | null>(null);
  const close = () => open(null);
  const toCome = season.entries.filter(({ isOver }) => !isOver);
  const over = season.entries.filter(({ isOver }) => isOver).slice(-SHOWN_WHEN_OVER);
  const shown = [...toCome.filter(({ isAim }) => isAim), ...toCome.filter(({ isAim }) => !isAim), ...over];
  return (
    <>
      {toCome.length === 0 && (
        <p>
          {plant.name} is entered for no show to come. Enter it, and its stops are planned back from the day.
        </p>
      )}
      <ul className={styles.shows}>
        {shown.map((entry) => (
          <li key={entry.showId}>
            <ShowLine plant={plant} entry={entry} onChange={() => open(entry)} />
          </li>
        ))}
      </ul>
      <div className={buttons.row}>
        <button
          type="button"
          className={toCome.length === 0 ? buttons.button : buttons.quiet}
          onClick={() => open('enter')}
        >
          <Icon name="show" /> {toCome.length === 0 ? 'Enter it for a show' : 'Enter it for another show'}
        </button>
        <Link href="/shows" className={buttons.quiet}>
          All shows
        </Link>
      </div>
      <Suspense fallback={null}>
        {opened === 'enter' && <EnterForShowSheet plant={plant} season={season} onClose={close} />}
        {opened !== null && opened !== 'enter' && (
          <EntrySheet
            show={opened.show}
            entry={opened}
            plantName={plant.name}
            isOver={opened.isOver}
            onClose={close}
          />
        )}
      </Suspense>
    </>
  );
}
