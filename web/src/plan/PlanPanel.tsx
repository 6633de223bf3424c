import { useId, useState } from 'react';
import { placeWords } from '../../../core/turned/place-words.ts';
import type { PlantPage } from '../../../server/schemas/pages.ts';
import type { Sitting } from '../../../server/schemas/sitting.ts';
import { SavableChart } from '../export/SavableChart.tsx';
import { dayWords, todayHere } from '../words/day-words.ts';
import { EarlierChoice } from './EarlierChoice.tsx';
import { PlanClock } from './PlanClock.tsx';
import { PlanLegend } from './PlanLegend.tsx';
import styles from './PlanPanel.module.css';
import { PlanTable } from './PlanTable.tsx';
import { inBallOf, reachAt } from './plan-shape.ts';
import { sideTold } from './plan-words.ts';
import { earlierPlans, litAzimuth } from './turned-sittings.ts';

/** Steps of the keyboard round the plan, degrees. */
const STEP_DEG = 15;

/** The plan clock with what it shows in words: any side can be asked for, an earlier sitting laid under it. */
export function PlanPanel({ page, sitting }: { page: PlantPage; sitting: Sitting }) {
  const report = sitting.turned;
  const earlier = earlierPlans(page.sittings, sitting);
  const [earlierId, chooseEarlier] = useState<string | null>(earlier[0]?.id ?? null);
  const [askedDeg, ask] = useState<number | null>(null);
  const sliderId = useId();
  if (report === null) return null;
  const { reach } = report.plan;
  const shown = earlier.find(({ id }) => id === earlierId);
  const under = shown ? inBallOf(shown.turned.plan.reach, reach) : null;
  const lit = litAzimuth(page.light);
  const today = todayHere();
  const at = askedDeg ?? report.turn?.toLightAzimuthDeg ?? 0;
  const asked = reachAt(reach, at);
  const before = shown && under ? reachAt(shown.turned.plan.reach, at) : null;

  return (
    <div className={styles.panel}>
      <SavableChart
        plantName={page.plant.name}
        what="Plan from above"
        lines={[
          `${dayWords(sitting.day, today)}. The mark is at 6 o’clock; reach in % of the ball’s radius.`,
        ]}
      >
        <PlanClock
          report={report}
          earlier={under?.reach ?? []}
          lightAzimuthDeg={lit?.azimuthDeg ?? null}
          askedDeg={at}
          onAsk={ask}
        />
      </SavableChart>
      {asked && (
        <div className={styles.asking}>
          <label htmlFor={sliderId}>Ask a side: tap the plan, or slide</label>
          <input
            id={sliderId}
            className={styles.slider}
            type="range"
            min="0"
            max={360 - STEP_DEG}
            step={STEP_DEG}
            value={Math.round(clockwiseOf(at) / STEP_DEG) * STEP_DEG}
            aria-valuetext={placeWords(asked.azimuthDeg)}
            onChange={(event) => ask(clockwiseOf(Number(event.target.value)))}
          />
          <p className={styles.told} aria-live="polite">
            {sideTold(asked, before && shown ? { reach: before, day: dayWords(shown.day, today) } : null)}
          </p>
        </div>
      )}
      <PlanLegend report={report} light={lit?.words ?? null} earlier={under !== null} />
      <EarlierChoice
        sittings={earlier}
        chosenId={shown?.id ?? null}
        bySize={under?.bySize ?? true}
        onChoose={chooseEarlier}
      />
      {reach.length > 0 && <PlanTable reach={reach} />}
    </div>
  );
}

/** The slider runs the way of the clock, azimuths run against it: one is the other turned over. */
function clockwiseOf(deg: number): number {
  return (360 - (deg % 360)) % 360;
}
