import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import type { Stand } from '../../../server/schemas/stand.ts';
import { standsQuery } from '../api/queries.ts';
import buttons from '../parts/buttons.module.css';
import { Fault } from '../parts/Fault.tsx';
import { Icon } from '../parts/Icon.tsx';
import { countWords } from '../words/plant-words.ts';
import { LIGHT_WORDS, SCALE_WORDS } from '../words/stand-words.ts';
import { keptDraft } from './kept-draft.ts';
import styles from './StandsScreen.module.css';
import { SET_UP_STEPS } from './set-up-steps.ts';

/** All stands, the way to a new one, and a set-up that was left half-way. */
export default function StandsScreen() {
  const { data: stands, error, refetch, isPending } = useQuery(standsQuery);
  const kept = keptDraft.useValue();
  if (isPending) return <p>Fetching the stands…</p>;
  if (!stands) return <Fault fault={error} onAgain={() => refetch()} />;
  const standing = stands.filter(({ putAway }) => !putAway);
  const away = stands.filter(({ putAway }) => putAway);
  return (
    <div className={styles.screen}>
      <h1>Stands</h1>
      <p>
        A stand is the place where you photograph: camera, backdrop, where the pot goes, where the light comes
        from. Set it up once, in five minutes, and the numbers of every week can be compared.
      </p>
      {kept && (
        <div className={styles.left}>
          <p>
            A set-up was left at step {SET_UP_STEPS.indexOf(kept.step) + 1} of {SET_UP_STEPS.length}
            {kept.draft.name && <>: {kept.draft.name}</>}. All you typed is kept.
          </p>
          <div className={buttons.row}>
            <Link href="/stands/new" className={buttons.button}>
              Go on with it
            </Link>
            <button type="button" className={buttons.quiet} onClick={() => keptDraft.write(null)}>
              Drop it
            </button>
          </div>
        </div>
      )}
      {standing.length > 0 && (
        <ul className={styles.list}>
          {standing.map((stand) => (
            <StandCard key={stand.id} stand={stand} />
          ))}
        </ul>
      )}
      {away.length > 0 && (
        <details className={styles.away}>
          <summary>{countWords(away.length, 'stand')} put away</summary>
          <ul className={styles.list}>
            {away.map((stand) => (
              <StandCard key={stand.id} stand={stand} />
            ))}
          </ul>
        </details>
      )}
      <div className={buttons.row}>
        {!kept && (
          <Link href="/stands/new" className={standing.length === 0 ? buttons.button : buttons.quiet}>
            <Icon name="add" /> {standing.length === 0 ? 'Set up the stand' : 'Set up another stand'}
          </Link>
        )}
        <Link href="/stand-sheet" className={buttons.quiet}>
          <Icon name="sheet" /> The stand sheet
        </Link>
      </div>
    </div>
  );
}

function StandCard({ stand }: { stand: Stand }) {
  const facts = [
    stand.lightSide && `light ${LIGHT_WORDS[stand.lightSide]}`,
    `millimetres from ${SCALE_WORDS[stand.scaleFrom]}`,
    stand.plants === 0 ? 'no plant yet' : countWords(stand.plants, 'plant'),
  ].filter(Boolean);
  return (
    <li className={styles.card}>
      {stand.emptyPhoto ? (
        <img src={`${stand.emptyPhoto.url}?width=320`} alt="" className={styles.picture} />
      ) : (
        <span className={styles.none}>no empty photo yet</span>
      )}
      <div>
        <h2>
          <Link href={`/stands/${stand.id}`} className={styles.name}>
            {stand.name}
          </Link>
        </h2>
        <p className={styles.facts}>{facts.join(' · ')}</p>
      </div>
    </li>
  );
}
