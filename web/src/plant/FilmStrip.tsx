import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { dayWords, shortDayWords, todayHere } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';
import styles from './FilmStrip.module.css';
import { type Leaf, turnWords } from './leafing.ts';
import type { SheetName } from './PlantSheets.tsx';

/** All photos side by side, the newest first. */
export function FilmStrip({
  leaves,
  chosen,
  onChoose,
  onOpen,
}: {
  leaves: readonly Leaf[];
  chosen: Leaf;
  onChoose: (viewId: string) => void;
  onOpen: (sheet: SheetName) => void;
}) {
  const current = useRef<HTMLButtonElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: follows the chosen photo
  useEffect(() => {
    const tile = current.current;
    const strip = tile?.closest('ol');
    // Moves the strip only, never the page.
    if (tile && strip) strip.scrollLeft = tile.offsetLeft - (strip.clientWidth - tile.clientWidth) / 2;
  }, [chosen.view.id]);
  const today = todayHere();
  return (
    <section aria-label="All photos of this plant">
      <ol className={styles.strip}>
        {leaves.map(({ sitting, view }) => {
          const isChosen = view.id === chosen.view.id;
          return (
            <li key={view.id}>
              <button
                type="button"
                ref={isChosen ? current : null}
                className={styles.tile}
                aria-current={isChosen || undefined}
                aria-label={[dayWords(sitting.day, today), turnWords(view.turnDeg)]
                  .filter(Boolean)
                  .join(', ')}
                onClick={() => onChoose(view.id)}
              >
                <Photo view={view} crop={plantCrop(view, 1)} label="" detail={320} />
                <span>{shortDayWords(sitting.day)}</span>
                {view.report && view.report.status !== 'measured' && (
                  <span className={styles.not}>not measured</span>
                )}
              </button>
            </li>
          );
        })}
      </ol>
      <div className={styles.foot}>
        <p>
          {countWords(leaves.length, 'photo')}, newest first. Swipe the photo or press the arrow keys to leaf
          through.
        </p>
        {leaves.length > 1 && (
          <div className={buttons.row}>
            <Link href={`/plants/${chosen.sitting.plantId}/film`} className={buttons.quiet}>
              <Icon name="film" /> Play as a film
            </Link>
            <button
              type="button"
              className={buttons.quiet}
              onClick={() => onOpen({ name: 'compare', leaf: chosen })}
            >
              <Icon name="overlay" /> Compare two photos
            </button>
          </div>
        )}
      </div>
    </section>
  );
}
