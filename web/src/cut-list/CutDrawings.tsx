import { useState } from 'react';
import type { CutList } from '../../../server/schemas/cuts.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { Choices } from '../parts/Choices.tsx';
import { ViewStrip } from '../plan/ViewStrip.tsx';
import styles from './CutDrawings.module.css';
import { CutPhoto } from './CutPhoto.tsx';
import { CutPlan } from './CutPlan.tsx';
import { cutTold } from './cut-words.ts';
import { DrawingLegend } from './DrawingLegend.tsx';
import type { ListedCut } from './listed-cut.ts';
import type { ShownView } from './use-shown-view.ts';

const WAYS = [
  { value: 'photo', words: 'On the photo' },
  { value: 'plan', words: 'From above' },
] as const;

/** Where the cuts are: on a photo, and for a sitting taken from all round on the plan seen from above. */
export function CutDrawings({
  page,
  sitting,
  list,
  cuts,
  held,
  shown,
  onHold,
}: {
  page: PlantPage;
  sitting: Sitting;
  list: CutList;
  cuts: readonly ListedCut[];
  held: ListedCut | null;
  shown: ShownView;
  onHold: (cutId: string) => void;
}) {
  const [way, choose] = useState<'photo' | 'plan'>('photo');
  const [told, tell] = useState<string | null>(null);
  const { views, view } = shown;
  const hasPlan = list.from === 'turned' && sitting.turned !== null;
  const isHidden = held !== null && view !== null && !held.marks.some(({ viewId }) => viewId === view.id);
  const take = (number: number) => {
    const cut = cuts[number - 1];
    if (!cut) return;
    tell(null);
    onHold(cut.id);
  };
  return (
    <section aria-label="Where to cut" className={styles.drawings}>
      {hasPlan && <Choices legend="Drawn" legendHidden options={WAYS} chosen={way} onChoose={choose} />}
      {way === 'plan' && hasPlan ? (
        <CutPlan report={sitting.turned} cuts={cuts} held={held} onTake={take} />
      ) : (
        view && (
          <>
            <div className={styles.frame}>
              <CutPhoto
                view={view}
                list={list}
                cuts={cuts}
                held={held}
                label={`${page.plant.name} with ${cuts.length === 0 ? 'no cuts' : 'its cuts'}`}
                onTell={(words, number) => {
                  if (number === null) tell(words);
                  else take(number);
                }}
              />
            </div>
            {views.length > 1 && (
              <ViewStrip views={views} shownId={view.id} onShow={(viewId) => shown.choose(viewId)} />
            )}
          </>
        )
      )}
      <p aria-live="polite" className={styles.told}>
        {told ?? (held ? cutTold(held) : 'Tap a mark to hear where it is.')}
        {told === null && isHidden && way === 'photo' && ' This view does not show it.'}
      </p>
      {way === 'photo' && <DrawingLegend list={list} />}
    </section>
  );
}
