import { lazy, Suspense, useRef, useState } from 'react';
import type { PlantPage } from '../../../../server/schemas/pages.ts';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import type { OwnWorkRow } from '../../../../server/schemas/work.ts';
import buttons from '../../parts/buttons.module.css';
import { Icon } from '../../parts/Icon.tsx';
import type { SheetName } from '../../plant/PlantSheets.tsx';
import { todayOf } from '../plan/plan-words.ts';
import { OwnWorkList } from './OwnWorkList.tsx';
import styles from './PlantWork.module.css';
import { SettledRow } from './SettledRow.tsx';
import { WorkRow } from './WorkRow.tsx';
import { workShelves } from './work-shelves.ts';

const OwnWorkSheet = lazy(() => import('./OwnWorkSheet.tsx'));

/** The dated work of one plant: now, soon, later, and what is settled. Its stops stand in the plan. */
export function PlantWork({
  page,
  season,
  onOpen,
}: {
  page: PlantPage;
  season: PlantSeasonAnswer;
  onOpen: (sheet: SheetName) => void;
}) {
  const [opened, open] = useState<{ own: OwnWorkRow | null } | null>(null);
  const heading = useRef<HTMLHeadingElement>(null);
  // The button that was pressed goes with its row: the focus stays in the section.
  const onSettled = () => heading.current?.focus();
  const today = todayOf(season);
  const { now, soon, later, settled } = workShelves(
    season.work.filter(({ kind }) => kind !== 'stop'),
    today,
  );
  const rows = (pieces: typeof now) => (
    <ul className={styles.rows}>
      {pieces.map((piece) => (
        <WorkRow key={piece.key} {...{ piece, page, today, onOpen, onSettled }} />
      ))}
    </ul>
  );
  return (
    <section aria-labelledby="work-name" className={styles.section}>
      <h2 id="work-name" ref={heading} tabIndex={-1} className={styles.name}>
        Work
      </h2>
      {now.length === 0 ? <p className={styles.sub}>Nothing waits today.</p> : rows(now)}
      {soon.length > 0 && (
        <details className={styles.fold}>
          <summary>In the next two weeks: {soon.length}</summary>
          {rows(soon)}
        </details>
      )}
      {later.length > 0 && (
        <details className={styles.fold}>
          <summary>Later: {later.length}</summary>
          {rows(later)}
        </details>
      )}
      {settled.length > 0 && (
        <details className={styles.fold}>
          <summary>Done, skipped or over: {settled.length}</summary>
          <ul className={styles.rows}>
            {settled.map((piece) => (
              <SettledRow key={piece.key} piece={piece} onSettled={onSettled} />
            ))}
          </ul>
        </details>
      )}
      <OwnWorkList ownWork={season.ownWork} today={today} onChange={(own) => open({ own })} />
      <div className={buttons.row}>
        <button type="button" className={buttons.quiet} onClick={() => open({ own: null })}>
          <Icon name="add" /> Add work of your own
        </button>
      </div>
      <Suspense fallback={null}>
        {opened && (
          <OwnWorkSheet plantId={page.plant.id} own={opened.own} today={today} onClose={() => open(null)} />
        )}
      </Suspense>
    </section>
  );
}
