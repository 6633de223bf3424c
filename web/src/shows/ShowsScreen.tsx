import { useQuery } from '@tanstack/react-query';
import { lazy, Suspense, useState } from 'react';
import type { Show } from '../../../core/season/show.ts';
import type { EntryRow, ShowList } from '../../../server/schemas/show.ts';
import { showsQuery } from '../api/shows.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { ShowCard } from './ShowCard.tsx';
import styles from './ShowsScreen.module.css';

const ShowSheet = lazy(() => import('./ShowSheet.tsx'));
const EnterSheet = lazy(() => import('./EnterSheet.tsx'));
const EntrySheet = lazy(() => import('./EntrySheet.tsx'));

/** Which dialog is open on the page of shows, and on what. */
export type OpenedSheet =
  | { name: 'show'; show: Show | null }
  | { name: 'enter'; show: Show; enteredIds: readonly string[] }
  | { name: 'entry'; show: Show; entry: EntryRow; plantName: string; isOver: boolean };

/** Every show with the plants entered for it, those to come first. */
export default function ShowsScreen() {
  const { data, error, refetch, isPending } = useQuery(showsQuery);
  const [opened, open] = useState<OpenedSheet | null>(null);
  if (isPending) return <p className={styles.waiting}>Fetching the shows…</p>;
  if (!data) return <Fault fault={error} onAgain={() => refetch()} />;
  const toCome = data.shows.filter(({ isOver }) => !isOver);
  const over = data.shows.filter(({ isOver }) => isOver);
  return (
    <>
      {error && <Fault fault={error} onAgain={() => refetch()} />}
      <div className={styles.top}>
        <h1>Shows</h1>
        <button type="button" className={buttons.button} onClick={() => open({ name: 'show', show: null })}>
          <Icon name="add" /> Add a show
        </button>
      </div>
      {data.shows.length === 0 && (
        <p className={styles.none}>
          No show is written down yet. Add one with its day and enter your plants: their stops are then
          planned back from it.
        </p>
      )}
      <Cards name="To come" shows={toCome} onOpen={open} />
      <Cards name="Over" shows={over} onOpen={open} />
      <Suspense fallback={null}>{opened && <Opened sheet={opened} onClose={() => open(null)} />}</Suspense>
    </>
  );
}

function Cards({
  name,
  shows,
  onOpen,
}: {
  name: string;
  shows: ShowList['shows'];
  onOpen: (sheet: OpenedSheet) => void;
}) {
  if (shows.length === 0) return null;
  return (
    <section className={styles.group}>
      <h2 className={styles.groupName}>{name}</h2>
      <ul className={styles.cards}>
        {shows.map((listed) => (
          <li key={listed.show.id}>
            <ShowCard listed={listed} onOpen={onOpen} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function Opened({ sheet, onClose }: { sheet: OpenedSheet; onClose: () => void }) {
  switch (sheet.name) {
    case 'show':
      return <ShowSheet show={sheet.show} onClose={onClose} />;
    case 'enter':
      return <EnterSheet show={sheet.show} enteredIds={sheet.enteredIds} onClose={onClose} />;
    case 'entry': {
      const { name: _, ...entry } = sheet;
      return <EntrySheet {...entry} onClose={onClose} />;
    }
  }
}
