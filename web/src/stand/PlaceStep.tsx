import { LightChoice } from './LightChoice.tsx';
import styles from './StandSteps.module.css';
import type { StepProps } from './StandSteps.tsx';

/** Where the pot goes, and from which side its light comes. */
export function PlaceStep({ draft, onChange }: StepProps) {
  return (
    <div className={styles.entries}>
      <div className={styles.entry}>
        <h3>The pot</h3>
        <ol className={styles.todo}>
          <li>Put the pot in the middle of the picture and draw or tape a ring round its foot.</li>
          <li>Each week: foot into the ring, the mark on the rim to the camera.</li>
          <li>A turntable or a saucer with a notch makes turned photos easy.</li>
        </ol>
        <h3>The light</h3>
        <p>
          Where does the light come from when you take the photo? Even light is best: no flash, and not
          straight into the lens.
        </p>
      </div>
      <LightChoice chosen={draft.lightSide} onChoose={(lightSide) => onChange({ ...draft, lightSide })} />
    </div>
  );
}
