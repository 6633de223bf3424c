import type { View } from '../../../server/schemas/sitting.ts';
import styles from './Overlay.module.css';
import { PART_WORDS } from './overlay-words.ts';
import { outlinePath } from './points.ts';
import { Tappable } from './Tappable.tsx';

type Parts = View['drawing']['parts'];

export const PARTS_SHOWN = ['pot', 'soil', 'support', 'flower'] as const satisfies readonly (keyof Parts)[];

/** The outlines of flower, pot, soil and label or support, each with a rhythm of its own. */
export function PartLines({ parts, onTell }: { parts: Parts; onTell: (words: string) => void }) {
  return PARTS_SHOWN.map((part) => {
    const path = parts[part].map((outline) => outlinePath(outline)).join('');
    if (path === '') return null;
    return (
      <Tappable key={part} words={PART_WORDS[part]} onTell={onTell}>
        <path d={path} className={styles.partCasing} />
        <path d={path} className={styles.part} data-part={part} />
        <path d={path} className={styles.reach} />
      </Tappable>
    );
  });
}
