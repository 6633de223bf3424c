import { Link } from 'wouter';
import type { Bench } from '../../../server/schemas/pages.ts';
import { plantCrop } from '../photo/crop.ts';
import { Photo } from '../photo/Photo.tsx';
import { Sparkline } from '../trend/Sparkline.tsx';
import { agoWords, showWords, todayHere } from '../words/day-words.ts';
import { kindAndVariety } from '../words/plant-words.ts';
import { BallMark } from './BallMark.tsx';
import { CardShutter } from './CardShutter.tsx';
import styles from './PlantCard.module.css';
import { PlantNeed } from './PlantNeed.tsx';
import { ScoreLine } from './ScoreLine.tsx';

/** One plant on the bench. Those that need something today stand larger. */
export function PlantCard({ row, large }: { row: Bench['plants'][number]; large: boolean }) {
  const { plant, newest, newestDay, trend } = row;
  const today = todayHere();
  return (
    <article className={styles.card} data-large={large || undefined}>
      <div className={styles.picture}>
        {newest ? (
          <Photo
            view={newest}
            crop={plantCrop(newest, 1)}
            label={`Newest photo of ${plant.name}`}
            detail={large ? 800 : 320}
          >
            {() => <BallMark view={newest} />}
          </Photo>
        ) : (
          <div className={styles.noPhoto}>No photo yet</div>
        )}
      </div>
      <div className={styles.words}>
        <h3 className={styles.name}>
          <Link href={`/plants/${plant.id}`} translate="no">
            {plant.name}
          </Link>
        </h3>
        <p className={styles.kind}>
          {plant.sample && <span className={styles.sample}>Sample</span>}
          {kindAndVariety(plant)}
        </p>
        <p className={styles.days}>
          {[
            newestDay && `photographed ${agoWords(newestDay, today)}`,
            plant.showDay && showWords(plant.showDay, today),
          ]
            .filter(Boolean)
            .map((words) => (
              <span key={words}>{words}</span>
            ))}
        </p>
        <PlantNeed row={row} large={large} />
      </div>
      <div className={styles.scores}>
        <ScoreLine report={newest?.report ?? null} />
        <Sparkline trend={trend} />
        <CardShutter plant={plant} />
      </div>
    </article>
  );
}
