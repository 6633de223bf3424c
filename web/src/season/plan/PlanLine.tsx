import { useRef } from 'react';
import type { Plant } from '../../../../server/schemas/plant.ts';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import { SavableChart } from '../../export/SavableChart.tsx';
import buttons from '../../parts/buttons.module.css';
import { Icon } from '../../parts/Icon.tsx';
import type { SheetName } from '../../plant/PlantSheets.tsx';
import { dayWords } from '../../words/day-words.ts';
import { BloomPicture } from './BloomPicture.tsx';
import { DueStop } from './DueStop.tsx';
import styles from './PlanLine.module.css';
import { PlanStep } from './PlanStep.tsx';
import { isLate, type Plan, todayOf } from './plan-words.ts';

/** The stops in their order up to the show: what is done, what is due, and what that means for the day. */
export function PlanLine({
  plant,
  season,
  plan,
  isPictured,
  onOpen,
}: {
  plant: Plant;
  season: PlantSeasonAnswer;
  plan: Plan;
  /** With the picture of what the plan lets expect. */
  isPictured: boolean;
  onOpen: (sheet: SheetName) => void;
}) {
  const today = todayOf(season);
  // Once a stop is written down, what it means is read next.
  const means = useRef<HTMLParagraphElement>(null);
  const writeStop = () => onOpen({ name: 'entry', kind: 'stops', entry: null });
  return (
    <>
      <ol className={styles.line}>
        {plan.steps.map((step) => {
          // The key of a stop's work ends so, however often it is reckoned.
          const piece = season.work.find(({ key }) => key.endsWith(`:stop:${step.role}:${plan.showDay}`));
          return (
            <PlanStep key={step.role} step={step} today={today}>
              {piece && piece.state !== 'to-come' && piece.state !== 'done' && (
                <DueStop
                  plant={plant}
                  piece={piece}
                  step={step}
                  today={today}
                  onOther={writeStop}
                  onWritten={() => means.current?.focus()}
                />
              )}
              {step.role === 'last' && step.state === 'left-out' && (
                <div className={buttons.row}>
                  <button type="button" className={buttons.quiet} onClick={writeStop}>
                    <Icon name="shorten" /> Write down a stop all the same
                  </button>
                </div>
              )}
            </PlanStep>
          );
        })}
        <li className={styles.step} data-state="show">
          <p>
            <b>Show, {dayWords(plan.showDay, today)}</b>
          </p>
        </li>
      </ol>
      <p ref={means} tabIndex={-1} className={styles.means} data-late={isLate(plan) || undefined}>
        {plan.words}
      </p>
      {isPictured && (
        <SavableChart plantName={plant.name} what="Likely bloom" lines={[plan.words]}>
          <BloomPicture season={season} plan={plan} />
        </SavableChart>
      )}
    </>
  );
}
