import type { PhotoReport } from '../../../core/report.ts';
import styles from './FrameWords.module.css';
import { movedWords } from './moved-words.ts';

const FROM_WORDS = {
  marks: 'Told by the stand sheet’s ring marks.',
  features: 'Told by what stands still in the picture.',
} as const;

/** Where the camera stood against the stand's picture: a quiet line; only a stand too far off asks for something. */
export function FrameWords({ report }: { report: PhotoReport }) {
  const { frame } = report;
  if (!frame) return null;
  return (
    <details className={styles.frame} data-standing={frame.standing}>
      <summary>
        <Corners standing={frame.standing} /> <span>{frame.words}</span>
      </summary>
      <p>
        {STANDING_WORDS[frame.standing]} {FROM_WORDS[frame.from]} {movedWords(frame)}
      </p>
    </details>
  );
}

const STANDING_WORDS = {
  same: 'The photo lies on the stand’s picture as it should.',
  moved: 'The photo was moved back into the stand’s frame before it was measured, so the numbers hold.',
  far: 'That is too far to be put right: this photo’s numbers are shown, but they are not compared with the others. Put the camera back on its mark and take it again.',
} as const;

/** The frame's four corners, and a second frame beside it when the camera stands elsewhere. */
function Corners({ standing }: { standing: 'same' | 'moved' | 'far' }) {
  const shift = { same: 0, moved: 3, far: 6 }[standing];
  return (
    <svg width="30" height="22" viewBox="0 0 30 22" aria-hidden="true">
      <g fill="none" stroke="currentColor" strokeWidth="2" strokeLinecap="round">
        <path d="M2 6V2h5M17 2h5v4M22 14v4h-5M7 18H2v-4" opacity={shift === 0 ? 1 : 0.55} />
        {shift > 0 && (
          <path d={`M${2 + shift} 20h20V5`} strokeDasharray={standing === 'far' ? 'none' : '3 3'} />
        )}
      </g>
    </svg>
  );
}
