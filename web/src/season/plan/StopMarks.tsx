import styles from './BloomPicture.module.css';
import { anchored } from './bloom-drawing.ts';
import type { Plan } from './plan-words.ts';

const TOP = 166;
const THICK = 14;

/** The windows of the stops as bars under the calendar; a stop that is done as a full mark on its day. */
export function StopMarks({
  plan,
  across,
  width,
}: {
  plan: Plan;
  across: (at: string) => number;
  width: number;
}) {
  return (
    <g>
      {plan.steps.map(({ role, window, doneOn, state }) => {
        const [from, to] = [across(window.from), across(window.to)];
        const middle = doneOn === null ? (from + to) / 2 : across(doneOn);
        return (
          <g key={role}>
            <rect
              x={from}
              y={TOP}
              width={Math.max(to - from, 5)}
              height={THICK}
              rx="3"
              className={styles.window}
              data-state={state}
            />
            {doneOn !== null && (
              <circle cx={across(doneOn)} cy={TOP + THICK / 2} r="6.5" className={styles.done} />
            )}
            <text x={middle} y={TOP + 32} className={styles.small} {...anchored(middle, width)}>
              {role}
            </text>
          </g>
        );
      })}
    </g>
  );
}
