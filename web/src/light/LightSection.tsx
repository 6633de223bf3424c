import { lazy, Suspense, useState } from 'react';
import { sideWords } from '../../../core/turned/place-words.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import { capital } from '../words/turn-words.ts';
import { LedgerDial } from './LedgerDial.tsx';
import styles from './LightSection.module.css';
import { daysWords, rhythmWords } from './light-words.ts';
import { NextTurn } from './NextTurn.tsx';
import { SeasonOfLight } from './SeasonOfLight.tsx';
import { TurnNow } from './TurnNow.tsx';

const TurnSheet = lazy(() => import('./TurnSheet.tsx'));
const RhythmSheet = lazy(() => import('./RhythmSheet.tsx'));

type Opened = 'turn' | 'rhythm';

/** Which side has had how much light, the next turn of the pot, and its record. */
export default function LightSection({ page }: { page: PlantPage }) {
  const { plant, light, turns } = page;
  const { ledger, next } = light;
  const [opened, open] = useState<Opened | null>(null);
  const close = () => open(null);
  return (
    <section aria-labelledby="light-name" className={styles.section}>
      <h2 id="light-name">Light and turning</h2>
      <p>{standsWords(ledger)}</p>
      {next && <NextTurn next={next} />}
      <TurnNow page={page} onOther={() => open('turn')} />
      {ledger.sides.some(({ daysFaced }) => daysFaced > 0) && (
        <>
          <LedgerDial ledger={ledger} />
          <p className={styles.sub}>
            Days that each side has faced the light: the larger the slice, the more days. {ledger.why}
            {ledger.gapAzimuthDeg !== null && ' That side is hatched.'}
          </p>
        </>
      )}
      <div className={styles.rhythm}>
        <p>
          <b>Rhythm.</b> {rhythmWords(plant.turnRhythm)}.
        </p>
        <button type="button" className={buttons.quiet} onClick={() => open('rhythm')}>
          <Icon name="edit" /> Change the rhythm
        </button>
      </div>
      {turns.length > 0 && <p className={styles.sub}>Every turn stands in the log below.</p>}
      <SeasonOfLight page={page} />
      <Suspense fallback={null}>
        {opened === 'turn' && <TurnSheet page={page} turn={null} onClose={close} />}
        {opened === 'rhythm' && <RhythmSheet plant={plant} onClose={close} />}
      </Suspense>
    </section>
  );
}

function standsWords({ nowFacesDeg, sinceDay, daysSinceTurn }: PlantPage['light']['ledger']): string {
  if (nowFacesDeg === null || sinceDay === null || daysSinceTurn === null) {
    return 'No turn is written down yet. Say once which side faces the light; from then on a tap a week is enough.';
  }
  const since =
    daysSinceTurn === 0
      ? 'since today'
      : `since ${dayWords(sinceDay, todayHere())}, ${daysWords(daysSinceTurn)}`;
  return `${capital(sideWords(nowFacesDeg))} faces the light ${since}.`;
}
