import { Link } from 'wouter';
import type { Stand } from '../../../server/schemas/stand.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { compassWords } from '../words/compass-words.ts';
import { LIGHT_WORDS, SCALE_WORDS, sheetWords } from '../words/stand-words.ts';
import { latitudeEntryOf } from './earth-entry.ts';
import { lengthWords } from './length-entry.ts';
import styles from './StandScreen.module.css';
import type { SetUpStep } from './set-up-steps.ts';

/** What is known of the stand, each with the way to change it. */
export function StandFacts({ stand }: { stand: Stand }) {
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
    ['Latitude and window', placeOnEarth(stand), 'place'],
    [
      'Millimetres from',
      stand.sheet ? `${SCALE_WORDS.sheet}, ${sheetWords(stand.sheet)}` : SCALE_WORDS[stand.scaleFrom],
      'scale',
    ],
  ];
  return (
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
  );
}

function placeOnEarth({ latitudeDeg, lightBearingDeg }: Stand): string {
  if (latitudeDeg === null && lightBearingDeg === null) return 'not given';
  return [
    latitudeDeg === null ? null : latitudeEntryOf(latitudeDeg).replace(' ', '° '),
    lightBearingDeg === null ? 'light from all sides' : `the window looks ${compassWords(lightBearingDeg)}`,
  ]
    .filter(Boolean)
    .join(', ');
}
