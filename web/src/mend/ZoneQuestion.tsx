import type { View } from '../../../server/schemas/sitting.ts';
import type { UnsureZone } from '../photo/outline-words.ts';
import { Photo } from '../photo/Photo.tsx';
import { boxAround, outlinePath } from '../photo/points.ts';
import picture from './MendPicture.module.css';
import styles from './MendTools.module.css';
import { zoneWords } from './mend-words.ts';

/** Asks about one unsure zone after the other: yes puts it in, no puts it out. */
export function ZoneQuestion({
  view,
  zone,
  index,
  count,
  onAnswer,
  onNext,
}: {
  view: View;
  zone: UnsureZone;
  index: number;
  count: number;
  onAnswer: (isLeaf: boolean) => void;
  onNext: () => void;
}) {
  const words = zoneWords(zone, index, count);
  return (
    <section className={styles.question} aria-label="Unsure zones">
      <div className={styles.zone}>
        <Photo view={view} crop={cropOf(zone)} detail={1600} label="The zone, closer">
          {() => (
            <>
              <path d={outlinePath(zone.outlinePx)} className={picture.casing} />
              <path d={outlinePath(zone.outlinePx)} className={picture.zoneEdge} />
            </>
          )}
        </Photo>
      </div>
      <div className={styles.asks}>
        <p aria-live="polite">
          <b>Is this leaf?</b> <span className={styles.small}>{words}</span>
        </p>
        <div className={styles.answers}>
          <button type="button" className={styles.tool} onClick={() => onAnswer(true)}>
            Yes
          </button>
          <button type="button" className={styles.tool} onClick={() => onAnswer(false)}>
            No
          </button>
          <button type="button" className={styles.tool} disabled={count < 2} onClick={onNext}>
            Next
          </button>
        </div>
      </div>
    </section>
  );
}

/** A square about the zone with as much room again around it. */
function cropOf({ outlinePx }: UnsureZone) {
  const box = boxAround(outlinePx) ?? { x: 0, y: 0, width: 1, height: 1 };
  const size = Math.max(box.width, box.height) * 2;
  return {
    x: box.x + (box.width - size) / 2,
    y: box.y + (box.height - size) / 2,
    width: size,
    height: size,
  };
}
