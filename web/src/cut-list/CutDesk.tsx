import { useEffect, useRef, useState } from 'react';
import type { CutList } from '../../../server/schemas/cuts.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { Fault } from '../parts/Fault.tsx';
import { AfterTheWork } from './AfterTheWork.tsx';
import { BallSection } from './BallSection.tsx';
import { BesideTheHand } from './BesideTheHand.tsx';
import styles from './CutDesk.module.css';
import { CutDrawings } from './CutDrawings.tsx';
import { CutPasses } from './CutPasses.tsx';
import { countedWords, progressWords } from './cut-words.ts';
import { listedCuts, nextCut } from './listed-cut.ts';
import { PlannedAndDone } from './PlannedAndDone.tsx';
import { PrintButton } from './PrintButton.tsx';
import { PrintedList } from './PrintedList.tsx';
import { ScoreMeanings } from './ScoreMeanings.tsx';
import { ScoreStrip } from './ScoreStrip.tsx';
import { Unseen } from './Unseen.tsx';
import { useMarking } from './use-marking.ts';
import { useShownView } from './use-shown-view.ts';
import { inOrder, workingOrder } from './working-order.ts';

/** The drawn photo beside the list that is worked through. */
export function CutDesk({
  page,
  sitting,
  list,
  newest,
}: {
  page: PlantPage;
  sitting: Sitting;
  list: CutList;
  newest: boolean;
}) {
  const cuts = listedCuts(list);
  const marking = useMarking(list);
  const [heldId, hold] = useState<string | null>(null);
  const next = nextCut(inOrder(cuts, workingOrder.useValue()));
  const held = cuts.find(({ id }) => id === heldId) ?? next;
  const shown = useShownView(sitting, list, held);
  // A cut whose change was refused may have left the list: then it is said over the list.
  const lost = cuts.some(({ id }) => id === marking.fault?.cutId) ? null : marking.fault;
  const drawings = useRef<HTMLDivElement>(null);
  const asked = useRef(false);
  useEffect(() => {
    // Only what the grower asked to see is brought into sight; ticking off keeps the list where it is.
    if (asked.current) drawings.current?.scrollIntoView({ block: 'start' });
    asked.current = false;
  });

  return (
    <div className={styles.desk}>
      <div ref={drawings} className={styles.drawings}>
        <CutDrawings
          page={page}
          sitting={sitting}
          list={list}
          cuts={cuts}
          held={held}
          shown={shown}
          onHold={hold}
        />
      </div>
      <div className={styles.answers}>
        {!newest && (
          <p className={styles.earlier}>
            This list belongs to earlier photos. The plant has grown since: cut by the newest list.
          </p>
        )}
        <PlannedAndDone list={list} sittings={[...page.sittings, ...page.earlier]} />
        <section aria-labelledby="cuts-name" className={styles.cuts}>
          <div className={styles.name}>
            <h2 id="cuts-name">{cuts.length === 0 ? 'No cut is advised' : countedWords(cuts)}</h2>
            {cuts.length > 0 && <PrintButton />}
          </div>
          <ScoreStrip list={list} reckoning={marking.reckoning} />
          {cuts.length === 0 ? (
            <p>Nothing stands outside the ball to cut to by enough to be worth a cut.</p>
          ) : (
            <>
              <BesideTheHand advice={list.advice} />
              {lost && <Fault fault={lost.fault} />}
              <p role="status" className={styles.progress}>
                {progressWords(cuts)}
              </p>
              <CutPasses
                list={list}
                cuts={cuts}
                held={held}
                next={next}
                marking={marking}
                onHold={(id) => {
                  hold(id);
                  asked.current = id !== null;
                }}
              />
              <AfterTheWork page={page} list={list} cuts={cuts} />
            </>
          )}
        </section>
        <BallSection plant={page.plant} list={list} />
        <Unseen unseen={list.unseen} plantId={page.plant.id} from={list.from} />
        <ScoreMeanings list={list} />
      </div>
      <PrintedList plant={page.plant} sitting={sitting} list={list} cuts={cuts} view={shown.view} />
    </div>
  );
}
