import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import type { TurnedReport } from '../../../core/turned/measure-turned.ts';
import { PlanClock } from '../plan/PlanClock.tsx';
import { PlanLegend } from '../plan/PlanLegend.tsx';
import styles from './CutDrawings.module.css';
import type { ListedCut } from './listed-cut.ts';
import { PlanMarks } from './PlanMarks.tsx';
import { planMarks } from './plan-marks.ts';

/** Room for the numbers between reach and hours, CSS px. */
const NUMBERS_PX = 30;

/** The plan seen from above with the cuts on it; a tap takes the cut on that side in hand. */
export function CutPlan({
  report,
  cuts,
  held,
  printedPx,
  onTake,
}: {
  report: TurnedReport | null;
  cuts: readonly ListedCut[];
  held: ListedCut | null;
  printedPx?: number;
  onTake: (number: number) => void;
}) {
  if (report === null) return null;
  const marks = planMarks(cuts, report.plan.reach);
  const nearest = (azimuthDeg: number) =>
    cuts
      .filter((cut) => cut.azimuthDeg !== null)
      .sort(
        (a, b) =>
          Math.abs(turnBetween(a.azimuthDeg ?? 0, azimuthDeg)) -
          Math.abs(turnBetween(b.azimuthDeg ?? 0, azimuthDeg)),
      )[0];
  return (
    <>
      <PlanClock
        report={report}
        earlier={[]}
        lightAzimuthDeg={null}
        askedDeg={null}
        onAsk={(azimuthDeg) => {
          const cut = nearest(azimuthDeg);
          if (cut) onTake(cut.number);
        }}
        innerRoomPx={NUMBERS_PX}
        {...(printedPx === undefined ? {} : { printedPx })}
      >
        {(unitPx) => <PlanMarks marks={marks} held={held} unitPx={unitPx} />}
      </PlanClock>
      {printedPx === undefined && (
        <details className={styles.lines}>
          <summary>What the lines are</summary>
          <PlanLegend report={report} light={null} earlier={false} />
        </details>
      )}
    </>
  );
}
