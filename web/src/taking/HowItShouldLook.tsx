import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { outlinePath } from '../photo/points.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import styles from './HowItShouldLook.module.css';
import { usePattern } from './pattern.ts';
import { RimInPicture } from './RimInPicture.tsx';
import { markInPictureWords, markPlaceWords } from './taking-words.ts';
import { mirrorTwin } from './turn-plan.ts';

/** What the next shot should look like: the mark on the rim, and the last shot at this turn. */
export function HowItShouldLook({
  page,
  sitting,
  turnDeg,
}: {
  page: PlantPage;
  sitting: Sitting | null;
  turnDeg: number;
}) {
  const pattern = usePattern(page, sitting, turnDeg);
  const views = sitting?.views ?? [];
  const twin = mirrorTwin(turnDeg, views);
  return (
    <div className={styles.look}>
      <p>{markPlaceWords(turnDeg)}</p>
      <div className={styles.pictures}>
        <figure>
          <RimInPicture turnDeg={turnDeg} />
          <figcaption>{markInPictureWords(turnDeg)}</figcaption>
        </figure>
        {pattern && (
          <figure>
            <Pattern view={pattern.view} />
            <figcaption>
              At this turn on {dayWords(pattern.sitting.day, todayHere())}. It has grown since.
            </figcaption>
          </figure>
        )}
      </div>
      {twin && (
        <p>
          It will be the mirror twin of view {views.indexOf(twin) + 1}, which was taken from the opposite
          side: the same outline, left for right. It counts once.
        </p>
      )}
    </div>
  );
}

function Pattern({ view }: { view: View }) {
  return (
    <Photo view={view} crop={plantCrop(view, 1)} label="The last photo at this turn" detail={320}>
      {() => <path d={outlinePath(view.outlinePx)} className={styles.outline} />}
    </Photo>
  );
}
