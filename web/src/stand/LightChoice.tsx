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
          <path d="M96 84h128" className={styles.cloth} />
          <circle cx="160" cy="152" r="42" />
          <circle cx="160" cy="152" r="22" />
          <path d="M146 252h28v-20h-28zM152 232l-3-8h22l-3 8" />
          <path d="M160 216v-18" className={styles.sight} />
          {chosen && <path d={RAYS[chosen]} className={styles.rays} />}
        </svg>
        {LIGHT_SIDES.map((side) => (
          <label key={side} className={styles.side} data-side={side}>
            <input type="radio" name="light-side" checked={chosen === side} onChange={() => onChoose(side)} />
            <SunMark />
            <span>{LIGHT_WORDS[side]}</span>
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
  left: 'M88 134h24M106 129l6 5-6 5M88 152h24M106 147l6 5-6 5M88 170h24M106 165l6 5-6 5',
  right: 'M232 134h-24M214 129l-6 5 6 5M232 152h-24M214 147l-6 5 6 5M232 170h-24M214 165l-6 5 6 5',
  'behind-plant': 'M142 76v26M137 96l5 6 5-6M160 76v26M155 96l5 6 5-6M178 76v26M173 96l5 6 5-6',
  'behind-camera': 'M128 252v-46M123 212l5-6 5 6M192 252v-46M187 212l5-6 5 6',
  above:
    'M130 122l12 12M142 126v8h-8M190 122l-12 12M178 126v8h8M130 182l12-12M142 178v-8h-8M190 182l-12-12M178 178v-8h8',
};
