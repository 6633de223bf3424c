import { Field } from '../parts/Field.tsx';
import { lengthEntryOf } from './length-entry.ts';
import styles from './StandSteps.module.css';
import type { StepProps } from './StandSteps.tsx';

/** Where the camera stands: about as high as the pot's rim, a few steps back, zoomed in. */
export function CameraStep({ draft, fields, onChange }: StepProps) {
  return (
    <div className={styles.entries}>
      <div className={styles.entry}>
        <SideDrawing />
        <ol className={styles.todo}>
          <li>Put the camera on a tripod or a shelf, about as high as the pot’s rim, and level.</li>
          <li>Go a few steps back, two metres if you can, and zoom in until the plant fills the picture.</li>
          <li>From near by, the front of the plant reads too large. From far it does not.</li>
          <li>Mark its place with tape, so that it comes back to it each week.</li>
        </ol>
      </div>
      <div className={styles.entry}>
        <Field label="Name of the stand" help="What you call this place." fault={fields.name}>
          {(wiring) => (
            <input
              {...wiring}
              value={draft.name}
              autoComplete="off"
              placeholder="for example Shed bench"
              onChange={(event) => onChange({ ...draft, name: event.target.value })}
            />
          )}
        </Field>
        <Field
          label={`Camera to the middle of the pot, ${draft.tape} (may stay empty)`}
          help="With a tape, level from the lens to the pot. It takes the perspective out of the sizes. The stand sheet can find it, too."
          fault={fields.cameraDistanceMm}
        >
          {(wiring) => (
            <input
              {...wiring}
              inputMode="decimal"
              value={draft.distance}
              placeholder={`for example ${lengthEntryOf(1800, draft.tape)}`}
              onChange={(event) => onChange({ ...draft, distance: event.target.value })}
            />
          )}
        </Field>
        <Field
          label={`Lens above the bench, ${draft.tape} (may stay empty)`}
          help="How high the lens is above what the pot stands on. About the height of the rim is right."
          fault={fields.cameraHeightMm}
        >
          {(wiring) => (
            <input
              {...wiring}
              inputMode="decimal"
              value={draft.height}
              placeholder={`for example ${lengthEntryOf(120, draft.tape)}`}
              onChange={(event) => onChange({ ...draft, height: event.target.value })}
            />
          )}
        </Field>
      </div>
    </div>
  );
}

function SideDrawing() {
  return (
    <svg
      viewBox="0 0 340 176"
      className={styles.drawing}
      role="img"
      aria-label="From the side: the lens as high as the pot’s rim, the distance measured from the lens to the middle of the pot, the height from the bench to the lens."
    >
      <path d="M322 10v120" className={styles.cloth} />
      <path d="M34 130h296" />
      <path d="M252 96h40l-5 34h-30z" />
      <circle cx="272" cy="58" r="37" />
      <path d="M64 98h184" className={styles.sight} />
      <path d="M30 86h28v22H30zM58 92l7-3v18l-7-3M44 108v22M36 130l8-22 8 22" />
      <g className={styles.act}>
        <path d="M65 150h207M65 144v12M272 144v12M72 146l-7 4 7 4M265 146l7 4-7 4" />
        <path d="M14 98v32M9 98h10M9 130h10" />
      </g>
      <g className={styles.words}>
        <text x="168" y="171" textAnchor="middle">
          distance
        </text>
        <text x="154" y="91" textAnchor="middle">
          height of the rim
        </text>
        <text x="4" y="148">
          height
        </text>
      </g>
    </svg>
  );
}
