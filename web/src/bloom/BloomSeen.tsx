import { lazy, Suspense } from 'react';
import type { Day } from '../../../core/day/day.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { SavableChart } from '../export/SavableChart.tsx';
import fold from '../parts/twin.module.css';
import { BloomAgainstShow } from './BloomAgainstShow.tsx';
import { BloomOffers } from './BloomOffers.tsx';
import styles from './BloomSeen.module.css';
import { BloomTable } from './BloomTable.tsx';
import { bloomEvents, CURVE_MEANING, eventWords, notedWords, type ToldBloom } from './bloom-words.ts';

const BloomCurve = lazy(() => import('./BloomCurve.tsx'));

/** The bloom that the sittings tell: in a sentence, against the show, on its curve, and its days offered for the record. */
export default function BloomSeen({
  page,
  bloom,
  showDay,
  today,
}: {
  page: PlantPage;
  bloom: ToldBloom;
  /** The show that the plant is to bloom for; `null` without one. */
  showDay: string | null;
  today: Day;
}) {
  const noted = notedWords(page.notes, bloom, today);
  return (
    <section aria-labelledby="bloom-name" className={styles.seen}>
      <h3 id="bloom-name">Bloom</h3>
      <p className={styles.words}>{bloom.words}</p>
      {bloom.againstShow && (
        <BloomAgainstShow plantId={page.plant.id} against={bloom.againstShow} today={today} />
      )}
      <BloomOffers plantId={page.plant.id} offers={bloom.offers} today={today} />
      <div>
        <Suspense fallback={<div className={styles.waiting}>Drawing…</div>}>
          <SavableChart
            plantName={page.plant.name}
            what="Bloom"
            lines={[
              bloom.words,
              ...bloomEvents(bloom).map((event) => `${event.number}  ${eventWords(event, today)}`),
            ]}
          >
            <BloomCurve bloom={bloom} stops={page.stops} showDay={showDay} today={today} />
          </SavableChart>
        </Suspense>
        <BloomTable bloom={bloom} stops={page.stops} showDay={showDay} today={today} />
        <details className={`${fold.twin} ${styles.meaning}`}>
          <summary>What the curve rests on</summary>
          <p>{bloom.why}</p>
          {bloom.heads && <p>{bloom.heads.words}</p>}
          {noted && <p>{noted}</p>}
          <p className={styles.sub}>{CURVE_MEANING}</p>
          {bloom.againstShow && <p className={styles.sub}>{bloom.againstShow.standing}</p>}
        </details>
      </div>
    </section>
  );
}
