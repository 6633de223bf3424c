import { lazy, type ReactNode, Suspense } from 'react';
import type { PlantPage } from '../../../../server/schemas/pages.ts';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import fold from '../../parts/twin.module.css';
import type { SheetName } from '../../plant/PlantSheets.tsx';
import { FigureMakeup } from '../figures/FigureMakeup.tsx';
import { PlanLine } from './PlanLine.tsx';
import { isBloomAhead, todayOf } from './plan-words.ts';
import styles from './SeasonPicture.module.css';

const BloomSeen = lazy(() => import('../../bloom/BloomSeen.tsx'));

/**
 * One picture of the bloom at a time: what the plan lets expect until colour is seen, from then on the measured curve. The other is folded
 * away: the plan's stops and figures once they are past, or a bloom that is none of this plan's, because its last stop is still to come.
 */
export function SeasonPicture({
  page,
  season,
  onOpen,
}: {
  page: PlantPage;
  season: PlantSeasonAnswer;
  onOpen: (sheet: SheetName) => void;
}) {
  const { plan } = season;
  const { bloom, plant } = page;
  const seen = bloom?.state === 'told' && (
    <Suspense fallback={<p>One moment…</p>}>
      <BloomSeen page={page} bloom={bloom} showDay={plan?.showDay ?? plant.showDay} today={todayOf(season)} />
    </Suspense>
  );
  const planLine = (isPictured: boolean) =>
    plan && <PlanLine plant={plant} season={season} plan={plan} isPictured={isPictured} onOpen={onOpen} />;
  const makeup = <FigureMakeup plant={plant} season={season} />;
  if (seen && plan && !isBloomAhead(plan)) {
    return (
      <>
        {seen}
        <Folded words="The stops of this season">
          {planLine(false)}
          {makeup}
        </Folded>
      </>
    );
  }
  return (
    <>
      {plan === null && seen}
      {planLine(true)}
      {plan !== null && seen && <Folded words="The bloom that is on now">{seen}</Folded>}
      {makeup}
    </>
  );
}

function Folded({ words, children }: { words: string; children: ReactNode }) {
  return (
    <details className={`${fold.twin} ${styles.folded}`}>
      <summary>{words}</summary>
      {children}
    </details>
  );
}
