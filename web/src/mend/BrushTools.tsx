import { Icon } from '../parts/Icon.tsx';
import { WIDTH_STEPS } from './brush.ts';
import styles from './MendTools.module.css';
import { BRUSH_WORDS, type Brush } from './mend-words.ts';

const BRUSHES = ['keep', 'remove', 'move'] as const;

/** Which brush is in the hand, and how wide it is. */
export function BrushTools({
  brush,
  widthStep,
  onBrush,
  onWidth,
}: {
  brush: Brush;
  widthStep: number;
  onBrush: (brush: Brush) => void;
  onWidth: (step: number) => void;
}) {
  return (
    <>
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
      <div className={styles.width}>
        <button
          type="button"
          className={styles.tool}
          aria-label="Narrower brush"
          disabled={widthStep === 0}
          onClick={() => onWidth(widthStep - 1)}
        >
          <Dot radius={3} />
        </button>
        <input
          type="range"
          aria-label="Width of the brush"
          min="0"
          max={WIDTH_STEPS - 1}
          value={widthStep}
          onChange={(event) => onWidth(Number(event.target.value))}
        />
        <button
          type="button"
          className={styles.tool}
          aria-label="Wider brush"
          disabled={widthStep === WIDTH_STEPS - 1}
          onClick={() => onWidth(widthStep + 1)}
        >
          <Dot radius={8} />
        </button>
      </div>
    </>
  );
}

function Dot({ radius }: { radius: number }) {
  return (
    <svg width="22" height="22" viewBox="0 0 22 22" aria-hidden="true">
      <circle cx="11" cy="11" r={radius} fill="currentColor" />
    </svg>
  );
}

/** How the brush's stroke looks on the photo. */
function BrushSample({ brush }: { brush: Brush }) {
  if (brush === 'move') return <Icon name="move" />;
  return (
    <svg width="30" height="18" viewBox="0 0 30 18" aria-hidden="true">
      <rect width="30" height="18" rx="4" fill="var(--draw-leaf)" />
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
