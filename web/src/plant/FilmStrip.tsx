import { useEffect, useRef } from 'react';
import { Link } from 'wouter';
import type { EarlierSitting } from '../../../server/schemas/pages.ts';
import buttons from '../parts/buttons.module.css';
import { Icon } from '../parts/Icon.tsx';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { dayWords, shortDayWords, todayHere } from '../words/day-words.ts';
import { countWords } from '../words/plant-words.ts';
import styles from './FilmStrip.module.css';
import { type Leaf, turnWords } from './leafing.ts';
import type { SheetName } from './PlantSheets.tsx';

/** Half a year of weekly sittings is fetched at a time. */
const MORE_SITTINGS = 26;

/** All photos side by side, the newest first; those of long ago once they are asked for. */
export function FilmStrip({
  leaves,
  earlier,
  isFetching,
  chosen,
  onChoose,
  onEarlier,
  onOpen,
}: {
  leaves: readonly Leaf[];
  /** The sittings before those, in a line each. */
  earlier: readonly EarlierSitting[];
  isFetching: boolean;
  chosen: Leaf;
  onChoose: (viewId: string) => void;
  /** Fetches the sittings from a day on. */
  onEarlier: (fromDay: string) => void;
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
  const oldest = earlier[Math.min(MORE_SITTINGS, earlier.length) - 1];
  const photos = earlier.reduce((count, { views }) => count + views.length, leaves.length);
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
        {oldest && (
          <li>
            <button
              type="button"
              className={styles.more}
              disabled={isFetching}
              onClick={() => onEarlier(oldest.day)}
            >
              {isFetching ? 'One moment…' : 'Earlier photos'}
            </button>
          </li>
        )}
      </ol>
      <div className={styles.foot}>
        <p>
          {countWords(photos, 'photo')}, newest first. Swipe the photo or press the arrow keys to leaf
          through.
        </p>
        {photos > 1 && (
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
