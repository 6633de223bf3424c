import { WIDTH_STEPS } from './brush.ts';
import styles from './MendTools.module.css';

/** How wide the brush paints. */
export function BrushWidth({ step, onStep }: { step: number; onStep: (step: number) => void }) {
  return (
    <div className={styles.width}>
      <button
        type="button"
        className={styles.tool}
        aria-label="Narrower brush"
        disabled={step === 0}
        onClick={() => onStep(step - 1)}
      >
        <Dot radius={3} />
      </button>
      <input
        type="range"
        aria-label="Width of the brush"
        min="0"
        max={WIDTH_STEPS - 1}
        value={step}
        onChange={(event) => onStep(Number(event.target.value))}
      />
      <button
        type="button"
        className={styles.tool}
        aria-label="Wider brush"
        disabled={step === WIDTH_STEPS - 1}
        onClick={() => onStep(step + 1)}
      >
        <Dot radius={8} />
      </button>
    </div>
  );
}

function Dot({ radius }: { radius: number }) {
  return (
    <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
      <circle cx="11" cy="11" r={radius} fill="currentColor" />
    </svg>
  );
}
