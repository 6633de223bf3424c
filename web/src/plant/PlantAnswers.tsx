import { lazy, type ReactNode, Suspense } from 'react';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import { pairSinceStop } from '../compare/pairs.ts';
import { LimpFinding } from '../condition/LimpFinding.tsx';
import { LogSection } from '../log/LogSection.tsx';
import { ScoreList } from '../measures/ScoreList.tsx';
import type { Layer } from '../photo/layers.ts';
import { TrendPanel } from '../trend/TrendPanel.tsx';
import { AdviceList } from './AdviceList.tsx';
import type { Leaf } from './leafing.ts';
import styles from './PlantScreen.module.css';
import type { SheetName } from './PlantSheets.tsx';

const TurnedSection = lazy(() => import('../plan/TurnedSection.tsx'));
const SeasonSection = lazy(() => import('../season/SeasonSection.tsx'));
const LightSection = lazy(() => import('../light/LightSection.tsx'));
const ConditionSection = lazy(() => import('../condition/ConditionSection.tsx'));

/** All that is said of a plant beside its photo: what to do first, then numbers and how they go, season and bloom, then the rest. */
export function PlantAnswers({
  page,
  leaf,
  before,
  strip,
  onOpen,
  onShow,
  onShowLayer,
}: {
  page: PlantPage;
  leaf: Leaf;
  before: Leaf | null;
  /** All photos side by side, where they do not stand under the photo. */
  strip: ReactNode;
  onOpen: (sheet: SheetName) => void;
  onShow: (viewId: string | null) => void;
  onShowLayer: (viewId: string, layer: Layer) => void;
}) {
  return (
    <div className={styles.answers}>
      <AdviceList advice={page.advice} plantId={page.plant.id}>
        <LimpFinding page={page} />
      </AdviceList>
      {strip}
      <ScoreList
        kind={page.plant.kind}
        report={leaf.view.report}
        outlinePx={leaf.view.outlinePx}
        day={leaf.sitting.day}
        before={before}
        sinceStop={pairSinceStop(page)}
        onOpen={onOpen}
      />
      <TrendPanel
        plant={page.plant}
        trend={page.trend}
        stops={page.stops}
        notes={page.notes}
        turns={page.turns}
        trends={page.trends}
        growth={page.growth}
      />
      <Suspense fallback={<p>One moment…</p>}>
        <SeasonSection page={page} onOpen={onOpen} />
        <ConditionSection page={page} onShow={onShowLayer} />
        <TurnedSection page={page} sitting={leaf.sitting} onShow={onShow} />
        <LightSection page={page} />
      </Suspense>
      <LogSection page={page} onOpen={onOpen} />
    </div>
  );
}
