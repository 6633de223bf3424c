import { useRef } from 'react';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import { localeInUse } from '../../languages/speaker.ts';
import { useWidth } from '../../photo/use-width.ts';
import { dayWords, shortDayWords } from '../../words/day-words.ts';
import styles from './BloomPicture.module.css';
import { BloomTable } from './BloomTable.tsx';
import {
  acrossOf,
  anchored,
  chanceOn,
  GROUND,
  HEIGHT,
  HILL,
  hillPath,
  monthTicks,
  pictureDays,
} from './bloom-drawing.ts';
import { chanceWords, type Plan, todayOf } from './plan-words.ts';
import { StopMarks } from './StopMarks.tsx';
import { Uprights } from './Uprights.tsx';

const HALF = GROUND - HILL / 2;

/** How likely the plant is in full bloom over the calendar, with its stops before it and the show day in it. */
export function BloomPicture({ season, plan }: { season: PlantSeasonAnswer; plan: Plan }) {
  const place = useRef<HTMLElement>(null);
  const width = useWidth(place);
  const { bloomDays } = season;
  if (bloomDays.length === 0 || plan.effect === null) return null;
  const today = todayOf(season);
  const days = pictureDays(plan, bloomDays, today);
  const across = acrossOf(days, width);
  return (
    <figure ref={place} className={styles.figure}>
      <figcaption className={styles.caption}>
        {plan.bloomedOn === null
          ? 'Likely in full bloom, day by day, after '
          : `In full bloom since ${dayWords(plan.bloomedOn, today)}. The hill is what was expected after `}
        {plan.restsOn === 'written' ? 'the stop' : 'a stop'} of {dayWords(plan.effect.stopDay, today)}
        {plan.restsOn === 'today' && ' (today)'}
      </figcaption>
      {width > 0 && (
        <svg
          viewBox={`0 0 ${width} ${HEIGHT}`}
          height={HEIGHT}
          className={styles.picture}
          role="img"
          aria-label={heardWords(season, plan)}
        >
          <path d={`M0 ${HALF}H${width}`} className={styles.half} />
          <text x={width} y={HALF - 5} textAnchor="end" className={styles.small}>
            50 %
          </text>
          <path d={hillPath(bloomDays, across)} className={styles.hill} />
          <path d={`M0 ${GROUND}H${width}`} className={styles.ground} />
          {monthTicks(days, width, 48).map((first) => (
            <g key={first}>
              <path d={`M${across(first)} ${GROUND}v6`} className={styles.ground} />
              <text
                x={across(first)}
                y={GROUND + 20}
                className={styles.month}
                {...anchored(across(first), width)}
              >
                {monthWords(first)}
              </text>
            </g>
          ))}
          <StopMarks plan={plan} across={across} width={width} />
          <Uprights season={season} plan={plan} days={days} width={width} />
        </svg>
      )}
      <BloomTable season={season} plan={plan} />
    </figure>
  );
}

function monthWords(first: string): string {
  return new Intl.DateTimeFormat(localeInUse(), { month: 'short', timeZone: 'UTC' }).format(
    new Date(`${first}T00:00:00Z`),
  );
}

/** What the picture says, for those who hear it. */
function heardWords(season: PlantSeasonAnswer, plan: Plan): string {
  const today = todayOf(season);
  const atShow = chanceWords(chanceOn(season.bloomDays, plan.showDay));
  const [from, to] = plan.effect?.bloom90 ?? [plan.showDay, plan.showDay];
  return `Full bloom begins ${shortDayWords(from)} to ${dayWords(to, today)}, nine times in ten. In full bloom on the show day, ${dayWords(plan.showDay, today)}: ${atShow}. The table below says the same.`;
}
