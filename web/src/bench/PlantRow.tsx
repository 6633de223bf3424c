import { memo } from 'react';
import { Link } from 'wouter';
import type { Day } from '../../../core/day/day.ts';
import { Icon } from '../parts/Icon.tsx';
import { plantCrop } from '../photo/crop.ts';
import { PlainPhoto } from '../photo/PlainPhoto.tsx';
import { agoWords, showWords } from '../words/day-words.ts';
import { kindAndVariety } from '../words/plant-words.ts';
import { CardShutter } from './CardShutter.tsx';
import type { BenchRow } from './need-groups.ts';
import { isLate } from './order/bench-order.ts';
import styles from './PlantRow.module.css';
import { ScoreLine } from './ScoreLine.tsx';

/** What a plant's line is drawn from; the day as well, for it is drawn anew only when one of the two has changed. */
export interface PlantLine {
  readonly row: BenchRow;
  readonly today: Day;
}

/** One plant as a line, for a bench with many: its photo small, what it needs, its scores. */
export const PlantRow = memo(function PlantRow({ row, today }: PlantLine) {
  const { plant, newest, newestDay, advice } = row;
  const need = advice.find(({ urgency }) => urgency > 0);
  const hint = newest?.state === 'failed' ? newest.failure : newest?.report?.hint;
  return (
    <article className={styles.row}>
      <div className={styles.picture}>
        {newest ? (
          <PlainPhoto view={newest} crop={plantCrop(newest, 1)} detail={320} />
        ) : (
          <div className={styles.noPhoto} />
        )}
      </div>
      <div className={styles.who}>
        <h3 className={styles.name}>
          <Link href={`/plants/${plant.id}`} translate="no">
            {plant.name}
          </Link>
        </h3>
        <p className={styles.kind}>{kindAndVariety(plant)}</p>
      </div>
      <p className={styles.need}>
        {need ? (
          <>
            <Icon name={need.kind} size={20} /> <span>{need.what}</span>
          </>
        ) : (
          (hint ?? (newest ? 'Nothing needs doing.' : 'It waits for its first photo.'))
        )}
      </p>
      <p className={styles.days}>
        {isLate(row) && <span className={styles.late}>some work past its day</span>}
        {newestDay && <span>photographed {agoWords(newestDay, today)}</span>}
        {plant.showDay && <span>{showWords(plant.showDay, today)}</span>}
      </p>
      <CardShutter plant={plant} />
      <div className={styles.scores}>
        <ScoreLine report={newest?.report ?? null} />
      </div>
    </article>
  );
});
