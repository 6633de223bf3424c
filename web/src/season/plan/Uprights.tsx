import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import { shortDayWords } from '../../words/day-words.ts';
import styles from './BloomPicture.module.css';
import { acrossOf, anchored, chanceOn, GROUND, HILL, type PictureDays } from './bloom-drawing.ts';
import { chanceWords, type Plan, todayOf } from './plan-words.ts';

/** Nearer to the show than this, "today" stands beside its line, away from it. */
const NEAR_PX = 40;

/** The days that stand upright in the picture: today, the show, other shows, and the day of full bloom once it is noted. */
export function Uprights({
  season,
  plan,
  days,
  width,
}: {
  season: PlantSeasonAnswer;
  plan: Plan;
  days: PictureDays;
  width: number;
}) {
  const across = acrossOf(days, width);
  const onHill = (day: string) => GROUND - chanceOn(season.bloomDays, day) * HILL;
  const [today, show] = [across(todayOf(season)), across(plan.showDay)];
  const others = season.entries.filter(
    ({ isAim, isOver, show: { day } }) => !isAim && !isOver && day <= days.to,
  );
  const todayAside =
    Math.abs(show - today) < NEAR_PX
      ? ({ textAnchor: today <= show ? 'end' : 'start', dx: today <= show ? -5 : 5 } as const)
      : anchored(today, width);
  return (
    <g>
      {others.map(({ show: { id, day } }) => (
        <g key={id}>
          <path d={`M${across(day)} 42V${GROUND}`} className={styles.other} />
          <circle cx={across(day)} cy={onHill(day)} r="4.5" className={styles.otherDot} />
        </g>
      ))}
      <path d={`M${today} 42V${GROUND}`} className={styles.today} />
      <text x={today} y={36} className={styles.small} {...todayAside}>
        today
      </text>
      <path d={`M${show} 20V${GROUND}`} className={styles.show} />
      <text x={show} y={14} className={styles.label} {...anchored(show, width, 60)}>
        Show {shortDayWords(plan.showDay)}
        {plan.bloomedOn === null && `: ${chanceWords(chanceOn(season.bloomDays, plan.showDay))}`}
      </text>
      {plan.bloomedOn === null ? (
        <circle cx={show} cy={onHill(plan.showDay)} r="5.5" className={styles.showDot} />
      ) : (
        <circle cx={across(plan.bloomedOn)} cy={GROUND} r="6.5" className={styles.showDot} />
      )}
    </g>
  );
}
