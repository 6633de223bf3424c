import type { ReactNode } from 'react';
import styles from './Overlay.module.css';

/** Something drawn on the photo that says what it is, by tap or by key. */
export function Tappable({
  words,
  onTell,
  children,
}: {
  words: string;
  onTell: (words: string) => void;
  children: ReactNode;
}) {
  return (
    // biome-ignore lint/a11y/useSemanticElements: SVG has no button element
    <g
      role="button"
      tabIndex={0}
      aria-label={words}
      className={styles.tappable}
      onClick={() => onTell(words)}
      onKeyDown={(event) => {
        if (event.key !== 'Enter' && event.key !== ' ') return;
        event.preventDefault();
        onTell(words);
      }}
    >
      {children}
    </g>
  );
}
