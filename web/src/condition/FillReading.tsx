import type { Day } from '../../../core/day/day.ts';
import type { PlantFill } from '../../../server/schemas/condition.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import type { Layer } from '../photo/layers.ts';
import styles from './Condition.module.css';
import { cleanUpDays, FILL_SIDE, SHOW_ON_PHOTO, TIGHTNESS_LATER } from './condition-words.ts';

/** Thin places, the light at the base before and after each clean-up, and how tight the plant is beside others of the grower's. */
export function FillReading({
  fill,
  today,
  onShow,
}: {
  fill: PlantFill;
  today: Day;
  onShow: (viewId: string, layer: Layer) => void;
}) {
  const { newest, cleanUps, tightnessWords } = fill;
  return (
    <>
      {newest === null ? (
        <p>The newest sitting has no ball to look for gaps in.</p>
      ) : (
        <>
          <p>{newest.words}</p>
          <p className={styles.sub}>{FILL_SIDE}</p>
          {newest.thinClocks.length > 0 && (
            <div className={buttons.row}>
              <button type="button" className={buttons.quiet} onClick={() => onShow(newest.viewId, 'thin')}>
                <Icon name="look" /> {SHOW_ON_PHOTO.thin}
              </button>
            </div>
          )}
        </>
      )}
      {cleanUps.length > 0 && (
        <ul className={styles.list}>
          {cleanUps.map((one) => (
            <li key={one.noteId}>
              <b>{cleanUpDays(one, today)}.</b> {one.words}
            </li>
          ))}
        </ul>
      )}
      {tightnessWords === null ? <p className={styles.sub}>{TIGHTNESS_LATER}</p> : <p>{tightnessWords}</p>}
    </>
  );
}
