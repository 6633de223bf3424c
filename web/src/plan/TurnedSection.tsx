import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { HullPanel } from '../hull/HullPanel.tsx';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';
import { OneView } from './OneView.tsx';
import { PlanPanel } from './PlanPanel.tsx';
import { TurnedFaults } from './TurnedFaults.tsx';
import { TurnedNumbers } from './TurnedNumbers.tsx';
import styles from './TurnedSection.module.css';
import { TurnedWait } from './TurnedWait.tsx';
import { countedViews } from './turned-sittings.ts';
import { ViewStrip } from './ViewStrip.tsx';
import { WeakSide } from './WeakSide.tsx';

/** The sitting seen from all round; with one photo only, what it cannot know and how to have more. */
export default function TurnedSection({
  page,
  sitting,
  onShow,
}: {
  page: PlantPage;
  sitting: Sitting;
  onShow: (viewId: string) => void;
}) {
  const place = useRef<HTMLElement>(null);
  useEffect(() => {
    // The address may name this section, which is drawn only after the plant was fetched.
    if (window.location.hash === '#all-round') place.current?.scrollIntoView();
  }, []);
  return (
    <section ref={place} id="all-round" aria-labelledby="all-round-name" className={styles.section}>
      <h2 id="all-round-name">From all round</h2>
      {sitting.turnedState === 'one-view' ? (
        <OneView plantId={page.plant.id} />
      ) : (
        <Joined {...{ page, sitting, onShow }} />
      )}
    </section>
  );
}

function Joined({
  page,
  sitting,
  onShow,
}: {
  page: PlantPage;
  sitting: Sitting;
  onShow: (viewId: string) => void;
}) {
  const report = sitting.turned;
  const views = countedViews(sitting);
  const ready = sitting.turnedState === 'ready';
  return (
    <>
      {report && (
        <p className={styles.sub}>
          {dayWords(sitting.day, todayHere())}, {countWords(views.length, 'view')} in{' '}
          {countWords(report.plan.directions, 'direction')}. Seen from above, the mark at 6 o’clock.
        </p>
      )}
      {!ready && <TurnedWait sitting={sitting} />}
      {report && (
        <>
          <TurnedFaults sitting={sitting} views={views} onShow={onShow} />
          <WeakSide report={report} />
          <ViewStrip views={views} onShow={onShow} />
          <PlanPanel key={sitting.id} page={page} sitting={sitting} />
          <p className={styles.sub}>Open a number for its meaning.</p>
          <TurnedNumbers report={report} />
          {report.plan.hull && ready && <HullPanel page={page} sitting={sitting} />}
          <TurnedNotes notes={report.notes} />
        </>
      )}
      <div className={buttons.row}>
        <Link href={`/plants/${page.plant.id}/turned?sitting=${sitting.id}`} className={buttons.quiet}>
          <Icon name="camera" /> Add or correct views
        </Link>
      </div>
    </>
  );
}

function TurnedNotes({ notes }: { notes: readonly string[] }) {
  if (notes.length === 0) return null;
  return (
    <div>
      <h3>What these views can and cannot tell</h3>
      <ul className={styles.notes}>
        {notes.map((note) => (
          <li key={note}>{note}</li>
        ))}
      </ul>
    </div>
  );
}
