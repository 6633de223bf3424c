import { moved } from '../../../core/stand/frame/similarity.ts';
import { fitAspect } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { boxAround, outlinePath, pointsOfInterest } from '../photo/points.ts';
import type { Leaf } from '../plant/leafing.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './CompareSheet.module.css';
import { layOn } from './lay-on.ts';

/** Two days side by side through one window: the same place and size of the stand in both. */
export function CompareSide({ earlier, later, outlines }: { earlier: Leaf; later: Leaf; outlines: boolean }) {
  const today = todayHere();
  const { move } = layOn(later.view, earlier.view);
  const points = [
    ...pointsOfInterest(later.view),
    ...pointsOfInterest(earlier.view).map((point) => moved(move, point)),
  ];
  const photo = { x: 0, y: 0, width: later.view.widthPx, height: later.view.heightPx };
  const box = boxAround(points);
  const crop = box ? fitAspect(box, 1, photo) : photo;
  const matrix = `matrix(${move.a} ${move.b} ${-move.b} ${move.a} ${move.shiftX} ${move.shiftY})`;
  return (
    <div className={styles.sides}>
      {[earlier, later].map(({ sitting, view }) => (
        <figure key={view.id}>
          <Photo view={later.view} crop={crop} detail={800} label={dayWords(sitting.day, today)}>
            {() => (
              <>
                {/* The window is the later photo's; the earlier one covers it. */}
                {view === earlier.view && <rect {...crop} className={styles.cover} />}
                <g transform={view === earlier.view ? matrix : undefined}>
                  {view === earlier.view && (
                    <image
                      href={`${view.pictureUrl}?width=800`}
                      width={view.widthPx}
                      height={view.heightPx}
                      preserveAspectRatio="none"
                    />
                  )}
                  {outlines && (
                    <>
                      <path d={outlinePath(view.outlinePx)} className={styles.casing} />
                      <path d={outlinePath(view.outlinePx)} className={styles.under} />
                    </>
                  )}
                </g>
              </>
            )}
          </Photo>
          <figcaption>{dayWords(sitting.day, today)}</figcaption>
        </figure>
      ))}
    </div>
  );
}
