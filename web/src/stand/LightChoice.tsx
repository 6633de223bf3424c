import { LIGHT_SIDES, LIGHT_WORDS, type LightSide } from '../words/stand-words.ts';
import styles from './LightChoice.module.css';

/** The stand from above: a tap beside the plant says from where the light comes. */
export function LightChoice({
  chosen,
  onChoose,
}: {
  chosen: LightSide | null;
  onChoose: (side: LightSide | null) => void;
}) {
  return (
    <fieldset className={styles.choice}>
      <legend>Tap where the light comes from</legend>
      <div className={styles.plan}>
        <svg viewBox="0 0 320 320" className={styles.drawing} aria-hidden="true">
          <path d="M96 78h128" className={styles.cloth} />
          <circle cx="160" cy="152" r="58" />
          <path d="M146 254h28v-18h-28zM152 236l-3-7h22l-3 7" />
          <path d="M160 226v-12" className={styles.sight} />
          {chosen && <path d={RAYS[chosen]} className={styles.rays} />}
        </svg>
        {LIGHT_SIDES.map((side) => (
          <label key={side} className={styles.side} data-side={side}>
            <input type="radio" name="light-side" checked={chosen === side} onChange={() => onChoose(side)} />
            <SunMark />
            <span>
              <span className="only-heard">from </span>
              {LIGHT_WORDS[side].replace(/^from (the )?/, '')}
            </span>
          </label>
        ))}
      </div>
      <label className={styles.unknown}>
        <input type="radio" name="light-side" checked={chosen === null} onChange={() => onChoose(null)} />
        From several sides, or not known
      </label>
    </fieldset>
  );
}

function SunMark() {
  return (
    <svg width="24" height="24" viewBox="0 0 24 24" aria-hidden="true">
      <circle cx="12" cy="12" r="4.6" fill="currentColor" />
      <path
        d="M12 2v3M12 19v3M2 12h3M19 12h3M5 5l2 2M17 17l2 2M19 5l-2 2M5 19l2-2"
        stroke="currentColor"
        strokeWidth="2"
        strokeLinecap="round"
      />
    </svg>
  );
}

/** Three rays with heads, from the side to the plant. */
const RAYS: Record<LightSide, string> = {
  left: 'M76 118h26M96 113l6 5-6 5M66 186h36M96 181l6 5-6 5',
  right: 'M244 118h-26M224 113l-6 5 6 5M254 186h-36M224 181l-6 5 6 5',
  'behind-plant': 'M130 62v38M125 94l5 6 5-6M190 62v38M185 94l5 6 5-6',
  'behind-camera': 'M122 256v-46M117 216l5-6 5 6M198 256v-46M193 216l5-6 5 6',
  above:
    'M108 100l14 14M122 106v8h-8M212 100l-14 14M198 106v8h8M108 204l14-14M122 198v-8h-8M212 204l-14-14M198 198v-8h8',
};
