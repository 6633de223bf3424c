import { Icon } from '../parts/Icon.tsx';
import styles from './MendTools.module.css';
import { BRUSH_WORDS, type Brush } from './mend-words.ts';

const BRUSHES = ['keep', 'remove', 'move'] as const;

/** Which brush is in the hand. */
export function BrushTools({ brush, onBrush }: { brush: Brush; onBrush: (brush: Brush) => void }) {
  return (
    <fieldset className={styles.brushes}>
      <legend className="only-heard">What the finger or mouse does</legend>
      {BRUSHES.map((one) => (
        <button
          key={one}
          type="button"
          className={styles.brush}
          aria-pressed={brush === one}
          onClick={() => onBrush(one)}
        >
          <BrushSample brush={one} />
          {BRUSH_WORDS[one]}
        </button>
      ))}
    </fieldset>
  );
}

/** How the brush's stroke looks on the photo. */
function BrushSample({ brush }: { brush: Brush }) {
  if (brush === 'move') return <Icon name="move" />;
  return (
    <svg width="26" height="18" viewBox="2 0 26 18" aria-hidden="true" className={styles.sample}>
      <rect x="2" width="26" height="18" rx="4" fill="var(--draw-leaf)" />
      <path
        d="M6 9h18"
        stroke={`var(--draw-${brush})`}
        strokeOpacity="0.6"
        strokeWidth="10"
        strokeLinecap="round"
      />
      <path
        d="M6 9h18"
        stroke={`var(--draw-${brush})`}
        strokeWidth="2.5"
        strokeLinecap="round"
        strokeDasharray={brush === 'remove' ? '0.5 4.5' : undefined}
      />
    </svg>
  );
}
