import { lazy, Suspense, useState } from 'react';
import type { Plant } from '../../../../server/schemas/plant.ts';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import type { SeasonNoteRow } from '../../../../server/schemas/season-note.ts';
import buttons from '../../parts/buttons.module.css';
import { Icon } from '../../parts/Icon.tsx';
import { todayOf } from '../plan/plan-words.ts';
import styles from './FigureMakeup.module.css';
import { RecordList } from './RecordList.tsx';
import { SeasonNotes } from './SeasonNotes.tsx';
import { ShareBar } from './ShareBar.tsx';

const FiguresSheet = lazy(() => import('./FiguresSheet.tsx'));
const SeasonNoteSheet = lazy(() => import('./SeasonNoteSheet.tsx'));

/** What the plan rests on: how much of it is default and how much own record, with sum, source and records a tap away. */
export function FigureMakeup({ plant, season }: { plant: Plant; season: PlantSeasonAnswer }) {
  const [opened, open] = useState<'figures' | { note: SeasonNoteRow | null } | null>(null);
  const planned = season.plan?.planned ?? null;
  const today = todayOf(season);
  const ownElsewhere = season.records.filter(
    (record) => !isAmong(record, planned?.used ?? []) && !isAmong(record, planned?.leftOut ?? []),
  );
  return (
    <div className={styles.makeup}>
      {planned && (
        <>
          <p>
            From a {planned.depth} stop to full bloom: <b>{Math.round(planned.meanDays)} days</b>.{' '}
            {planned.shareInWords}
          </p>
          <ShareBar shares={planned.shares} />
        </>
      )}
      <details className={styles.fold}>
        <summary>What that rests on, and your own figures</summary>
        <div className={styles.inside}>
          {planned && (
            <dl className={styles.rows}>
              <dt>Sum</dt>
              <dd>{planned.sumInWords}. Each record of your own counts once.</dd>
              <dt>How sure</dt>
              <dd>
                The mean lies between {Math.round(planned.mean90Days[0])} and{' '}
                {Math.round(planned.mean90Days[1])} days, the next plant between{' '}
                {Math.round(planned.next90Days[0])} and {Math.round(planned.next90Days[1])}, nine times in
                ten.
              </dd>
              <dt>Default</dt>
              <dd>{planned.standing}</dd>
              <dt>How</dt>
              <dd>
                Normal–gamma updating of the default by the records (Murphy 2007; DeGroot 1970). No weather
                enters: a note on a season can set its record aside, nothing else.
              </dd>
            </dl>
          )}
          <RecordList
            name="Records that count"
            records={planned?.used ?? []}
            plantId={plant.id}
            today={today}
            none="None yet. Note the stops and the day of full bloom, and the next plan learns from them."
          />
          <RecordList
            name="Records that do not count here"
            records={[...(planned?.leftOut ?? []), ...ownElsewhere]}
            plantId={plant.id}
            today={today}
            none={null}
          />
          <SeasonNotes notes={season.seasonNotes} today={today} onChange={(note) => open({ note })} />
          <div className={buttons.row}>
            <button type="button" className={buttons.quiet} onClick={() => open('figures')}>
              <Icon name="edit" /> Set figures of your own
            </button>
            <button type="button" className={buttons.quiet} onClick={() => open({ note: null })}>
              <Icon name="add" /> Add a word on a season
            </button>
          </div>
        </div>
      </details>
      <Suspense fallback={null}>
        {opened === 'figures' && <FiguresSheet kind={plant.kind} onClose={() => open(null)} />}
        {opened !== null && opened !== 'figures' && (
          <SeasonNoteSheet plant={plant} note={opened.note} today={today} onClose={() => open(null)} />
        )}
      </Suspense>
    </div>
  );
}

type Recorded = PlantSeasonAnswer['records'][number];

function isAmong(record: Recorded, others: readonly Recorded[]): boolean {
  return others.some(({ plantId, stopDay }) => plantId === record.plantId && stopDay === record.stopDay);
}
