import { useQuery } from '@tanstack/react-query';
import { Link, useLocation } from 'wouter';
import type { Stand } from '../../../server/schemas/stand.ts';
import { standsQuery } from '../api/queries.ts';
import { bringStandBack, putStandAway } from '../api/stands.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import forms from '../parts/forms.module.css';
import { Icon } from '../parts/Icon.tsx';
import { useSending } from '../parts/use-sending.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';
import { LIGHT_WORDS, SCALE_WORDS, sheetWords } from '../words/stand-words.ts';
import { EmptyPhotoCheck } from './EmptyPhotoCheck.tsx';
import { lengthWords } from './length-entry.ts';
import styles from './StandScreen.module.css';
import type { SetUpStep } from './set-up-steps.ts';

/** One stand: what is known of it, each with the way to change it, its empty photo and its history. */
export default function StandScreen({ standId }: { standId: string }) {
  const { data: stands, error, refetch, isPending } = useQuery(standsQuery);
  if (isPending) return <p>Fetching the stand…</p>;
  const stand = stands?.find(({ id }) => id === standId);
  if (!stand) {
    return (
      <>
        <Fault fault={error ?? new Error('There is no such stand.')} onAgain={() => refetch()} />
        <p>
          <Link href="/stands">To the stands</Link>
        </p>
      </>
    );
  }
  const today = todayHere();
  const unknown = 'not given';
  const facts: readonly (readonly [string, string, SetUpStep])[] = [
    [
      'Camera to pot',
      stand.cameraDistanceMm === null ? unknown : lengthWords(stand.cameraDistanceMm),
      'camera',
    ],
    [
      'Lens above the bench',
      stand.cameraHeightMm === null ? unknown : lengthWords(stand.cameraHeightMm),
      'camera',
    ],
    ['Backdrop', stand.backdrop ?? unknown, 'backdrop'],
    ['Light', stand.lightSide ? LIGHT_WORDS[stand.lightSide] : 'from several sides, or not known', 'place'],
    [
      'Millimetres from',
      stand.sheet ? `${SCALE_WORDS.sheet}, ${sheetWords(stand.sheet)}` : SCALE_WORDS[stand.scaleFrom],
      'scale',
    ],
  ];
  return (
    <div className={styles.screen}>
      <header className={styles.head}>
        <h1>{stand.name}</h1>
        <p className={styles.soft}>
          As it is since {dayWords(stand.sinceDay, today)} · {standingWords(stand.plants)}
        </p>
      </header>
      <section aria-labelledby="facts-name">
        <h2 id="facts-name">As it stands</h2>
        <dl className={styles.facts}>
          {facts.map(([name, words, step]) => (
            <div key={name}>
              <dt>{name}</dt>
              <dd>{words}</dd>
              <Link href={`/stands/${stand.id}/set-up?step=${step}`} className={buttons.icon}>
                <Icon name="edit" />
                <span className="only-heard">Change: {name}</span>
              </Link>
            </div>
          ))}
        </dl>
        <p className={styles.soft}>
          A change holds from a day on. Photos taken before it keep the stand as it was then.
        </p>
      </section>
      <section aria-labelledby="empty-name" className={styles.part}>
        <h2 id="empty-name">The empty photo</h2>
        {stand.emptyPhoto ? (
          <EmptyPhotoCheck photo={stand.emptyPhoto} />
        ) : (
          <p>There is none yet. The first photo of a plant serves as the measure of the frame until then.</p>
        )}
        <div className={buttons.row}>
          <Link
            href={`/stands/${stand.id}/set-up?step=empty`}
            className={stand.emptyPhoto ? buttons.quiet : buttons.button}
          >
            <Icon name="camera" /> {stand.emptyPhoto ? 'Take it again' : 'Take the empty photo'}
          </Link>
          {stand.scaleFrom === 'sheet' && (
            <Link href={`/stand-sheet?paper=${stand.sheet?.paper ?? 'A4'}`} className={buttons.quiet}>
              <Icon name="sheet" /> The stand sheet
            </Link>
          )}
        </div>
      </section>
      <StandHistory stand={stand} />
      <PutStandAway stand={stand} />
    </div>
  );
}

function standingWords(plants: number): string {
  if (plants === 0) return 'no plant stands here yet';
  return plants === 1 ? 'one plant stands here' : `${countWords(plants, 'plant')} stand here`;
}

function StandHistory({ stand }: { stand: Stand }) {
  const today = todayHere();
  return (
    <section aria-labelledby="history-name">
      <h2 id="history-name">How it changed</h2>
      <ol className={styles.history} reversed>
        {stand.history.map(({ version, sinceDay, changed }) => (
          <li key={version} value={version}>
            <b>{dayWords(sinceDay, today)}.</b> {changed}
          </li>
        ))}
      </ol>
    </section>
  );
}

function PutStandAway({ stand }: { stand: Stand }) {
  const [, goTo] = useLocation();
  const { busy, fault, send } = useSending();
  if (stand.putAway) {
    return (
      <section className={forms.part}>
        <h2>Put away</h2>
        <p>This stand is put away: new photos are taken without it.</p>
        <button
          type="button"
          className={buttons.quiet}
          disabled={busy}
          onClick={() => send(() => bringStandBack(stand))}
        >
          Bring it back
        </button>
        {fault !== null && <Fault fault={fault} />}
      </section>
    );
  }

  async function putAway() {
    if (await send(() => putStandAway(stand))) goTo('/stands');
  }
  return (
    <section className={forms.part}>
      <h2>Put away</h2>
      <p>New photos are then taken without this stand. Photos already taken keep it, and it can come back.</p>
      <button type="button" className={buttons.quiet} disabled={busy} onClick={putAway}>
        Put {stand.name} away
      </button>
      {fault !== null && <Fault fault={fault} />}
    </section>
  );
}
