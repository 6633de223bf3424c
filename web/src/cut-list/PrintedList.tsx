import { useEffect } from 'react';
import { createPortal } from 'react-dom';
import { inTwoPasses } from '../../../core/cut/working-order.ts';
import type { CutList } from '../../../server/schemas/cuts.ts';
import type { Plant } from '../../../server/schemas/plant.ts';
import type { Sitting, View } from '../../../server/schemas/sitting.ts';
import { usePaper } from '../parts/use-paper.ts';
import { dayWords, todayHere } from '../words/day-words.ts';
import { kindAndVariety } from '../words/plant-words.ts';
import { CutPhoto } from './CutPhoto.tsx';
import { CutPlan } from './CutPlan.tsx';
import type { ListedCut } from './listed-cut.ts';
import { PrintedCuts } from './PrintedCuts.tsx';
import styles from './PrintedList.module.css';
import { PrintedScores } from './PrintedScores.tsx';

/** Px across a drawing on paper, 76 mm each of two and 100 mm alone: more than CSS counts, so that words on it come out in 8 to 9 pt. */
const PAIR_PX = 390;
const ALONE_PX = 470;

const PASS_NAMES = {
  tip: 'First pass: tip stops',
  deep: 'Look again, then the second pass: deeper',
} as const;

/** The list as it is printed: one page of A4 or Letter with the drawn photo and boxes to tick. Nothing of it is on the screen. */
export function PrintedList({
  plant,
  sitting,
  list,
  cuts,
  view,
}: {
  plant: Plant;
  sitting: Sitting;
  list: CutList;
  cuts: readonly ListedCut[];
  view: View | null;
}) {
  usePrintedAlone();
  const today = todayHere();
  const turned = list.from === 'turned' && sitting.turned !== null;
  const passes = inTwoPasses(cuts);
  const cautions = list.advice.filter(({ caution }) => caution);
  const howTo = list.advice.filter(({ caution }) => !caution);
  return createPortal(
    <article className={styles.page} data-testid="printed-list">
      <header className={styles.head}>
        <h1>{plant.name}: cut list</h1>
        <p>
          {kindAndVariety(plant)}. From the photos of {dayWords(list.day, today)}.
        </p>
      </header>
      <div className={styles.drawings} data-pair={turned || undefined}>
        {view && (
          <figure className={styles.drawing}>
            <CutPhoto
              view={view}
              list={list}
              cuts={cuts}
              held={null}
              label={`${plant.name} with its cuts`}
              printedPx={turned ? PAIR_PX : ALONE_PX}
              onTell={() => {}}
            />
            <figcaption>
              Yellow bar: cut here. Ring: the ball to cut to. Full outline: after the cuts; dotted: now.
            </figcaption>
          </figure>
        )}
        {turned && (
          <figure className={styles.drawing}>
            <CutPlan report={sitting.turned} cuts={cuts} held={null} printedPx={PAIR_PX} onTake={() => {}} />
            <figcaption>Seen from above. Dot: the tip. Bar: cut here. Ring: the ball as it is.</figcaption>
          </figure>
        )}
        {!turned && <Facts list={list} />}
      </div>
      {cuts.length === 0 ? (
        <p>No cut is advised.</p>
      ) : (
        passes.map(({ stop, cuts: ofPass }) => (
          <PrintedCuts
            key={stop}
            name={passes.length > 1 ? PASS_NAMES[stop] : null}
            cuts={ofPass}
            turned={turned}
          />
        ))
      )}
      {turned && <Facts list={list} />}
      <div className={styles.foot}>
        <ul>
          {howTo.map(({ words }) => (
            <li key={words}>{words}</li>
          ))}
        </ul>
        <div>
          {cautions.map(({ words }) => (
            <p key={words}>
              <b>▲ Take care.</b> {words}
            </p>
          ))}
        </div>
      </div>
    </article>,
    document.body,
  );
}

function Facts({ list }: { list: CutList }) {
  return (
    <div className={styles.facts}>
      <PrintedScores list={list} />
      <p>
        <b>Ball to cut to.</b> {list.ball?.words ?? list.ballWhyNot}
      </p>
      {list.unseen.slice(-1).map((words) => (
        <p key={words}>
          <b>Not seen.</b> {words}
        </p>
      ))}
    </div>
  );
}

/** Only this page is printed, on whatever paper the printer holds. */
function usePrintedAlone(): void {
  usePaper('margin: 11mm 12mm');
  useEffect(() => {
    document.documentElement.dataset.print = 'page';
    return () => {
      delete document.documentElement.dataset.print;
    };
  }, []);
}
