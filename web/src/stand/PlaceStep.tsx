import { Field } from '../parts/Field.tsx';
import { compassWords } from '../words/compass-words.ts';
import { readBearingDeg } from './earth-entry.ts';
import { LightChoice } from './LightChoice.tsx';
import styles from './StandSteps.module.css';
import type { StepProps } from './StandSteps.tsx';

/** Where the pot goes, and from which side its light comes, as seen from the camera and by the compass. */
export function PlaceStep({ draft, fields, onChange }: StepProps) {
  const bearing = readBearingDeg(draft.lightBearing);
  const facing = bearing.ok && bearing.deg !== null ? ` The window looks ${compassWords(bearing.deg)}.` : '';
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
      <div className={styles.entry}>
        <h3>The light over the season</h3>
        <p>With these two, each plant’s page shows how the sun’s side and the day’s length move.</p>
        <Field
          label="Latitude (may stay empty)"
          help="Whole degrees are enough; any map tells them. South of the equator with an S."
          fault={fields.latitudeDeg}
        >
          {(wiring) => (
            <input
              {...wiring}
              value={draft.latitude}
              placeholder="for example 52 N"
              autoComplete="off"
              onChange={(event) => onChange({ ...draft, latitude: event.target.value })}
            />
          )}
        </Field>
        <Field
          label="Where the window looks, by compass (may stay empty)"
          help={`From the pot through the middle of the window. Leave it empty where light comes from all sides, as in a greenhouse.${facing}`}
          fault={fields.lightBearingDeg}
        >
          {(wiring) => (
            <input
              {...wiring}
              value={draft.lightBearing}
              placeholder="for example 200 or SSW"
              autoComplete="off"
              onChange={(event) => onChange({ ...draft, lightBearing: event.target.value })}
            />
          )}
        </Field>
      </div>
    </div>
  );
}
