import { useRef } from 'react';
import type { PlantSeasonAnswer } from '../../../../server/schemas/season.ts';
import { useWidth } from '../../photo/use-width.ts';
import { dayWords, shortDayWords } from '../../words/day-words.ts';
import styles from './BloomPicture.module.css';
import { BloomTable } from './BloomTable.tsx';
import { acrossOf, chanceOn, hillPath, monthTicks, pictureDays } from './bloom-drawing.ts';
import { chanceWords, type Plan, todayOf } from './plan-words.ts';

const HEIGHT = 206;
const GROUND = 138;
const HILL = 92;
const HALF = GROUND - HILL / 2;
const STOPS = { top: 166, height: 14 };

/** How likely the plant is in full bloom over the calendar, with its stops before it and the show day in it. */
export function BloomPicture({ season, plan }: { season: PlantSeasonAnswer; plan: Plan }) {
  const place = useRef<HTMLElement>(null);
  const width = useWidth(place);
  const { bloomDays } = season;
  if (bloomDays.length === 0 || plan.effect === null) return null;
  const today = todayOf(season);
  const days = pictureDays(plan, bloomDays, today);
  const across = acrossOf(days, width);
  const atShow = chanceOn(bloomDays, plan.showDay);
  const others = season.entries.filter(({ isAim, isOver, show }) => !isAim && !isOver && show.day <= days.to);
  const words = `Likely in full bloom: ${shortDayWords(plan.effect.bloom90[0])} to ${dayWords(plan.effect.bloom90[1], today)} nine times in ten for its beginning. On the show day, ${dayWords(plan.showDay, today)}: ${chanceWords(atShow)}. The table below says the same.`;
  return (
    <figure ref={place} className={styles.figure}>
      <figcaption className={styles.caption}>
        Likely in full bloom, day by day, after {plan.restsOn === 'written' ? 'the stop' : 'a stop'} of{' '}
        {dayWords(plan.effect.stopDay, today)}
        {plan.restsOn === 'today' && ' (today)'}
      </figcaption>
      {width > 0 && (
        <svg
          viewBox={`0 0 ${width} ${HEIGHT}`}
          height={HEIGHT}
          className={styles.picture}
          role="img"
          aria-label={words}
        >
          <path d={`M0 ${HALF}H${width}`} className={styles.half} />
          <text x={width} y={HALF - 5} textAnchor="end" className={styles.small}>
            50 %
          </text>
          <path d={hillPath(bloomDays, across, GROUND, HILL)} className={styles.hill} />
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
          <Stops plan={plan} across={across} width={width} />
          {others.map(({ show }) => (
            <g key={show.id}>
              <path d={`M${across(show.day)} 42V${GROUND}`} className={styles.other} />
              <circle
                cx={across(show.day)}
                cy={GROUND - chanceOn(bloomDays, show.day) * HILL}
                r="4.5"
                className={styles.otherDot}
              />
            </g>
          ))}
          <path d={`M${across(today)} 42V${GROUND}`} className={styles.today} />
          <text x={across(today)} y={36} className={styles.small} {...anchored(across(today), width)}>
            today
          </text>
          <path d={`M${across(plan.showDay)} 20V${GROUND}`} className={styles.show} />
          <circle cx={across(plan.showDay)} cy={GROUND - atShow * HILL} r="5.5" className={styles.showDot} />
          <text
            x={across(plan.showDay)}
            y={14}
            className={styles.label}
            {...anchored(across(plan.showDay), width, 60)}
          >
            Show {shortDayWords(plan.showDay)}: {chanceWords(atShow)}
          </text>
        </svg>
      )}
      <BloomTable season={season} plan={plan} />
    </figure>
  );
}

/** The windows of the stops as bars; a stop that is done as a full mark on its day. */
function Stops({ plan, across, width }: { plan: Plan; across: (at: string) => number; width: number }) {
  return (
    <g>
      {plan.steps.map(({ role, window, doneOn, state }) => {
        const [from, to] = [across(window.from), across(window.to)];
        const middle = doneOn === null ? (from + to) / 2 : across(doneOn);
        return (
          <g key={role}>
            <rect
              x={from}
              y={STOPS.top}
              width={Math.max(to - from, 5)}
              height={STOPS.height}
              rx="3"
              className={styles.window}
              data-state={state}
            />
            {doneOn !== null && (
              <circle cx={across(doneOn)} cy={STOPS.top + STOPS.height / 2} r="6.5" className={styles.done} />
            )}
            <text x={middle} y={STOPS.top + 32} className={styles.small} {...anchored(middle, width)}>
              {role}
            </text>
          </g>
        );
      })}
    </g>
  );
}

/** Middle of the text on its place, unless it would run over an edge of the picture. */
function anchored(x: number, width: number, room = 24): { textAnchor: 'start' | 'middle' | 'end' } {
  if (x < room) return { textAnchor: 'start' };
  return { textAnchor: x > width - room ? 'end' : 'middle' };
}

function monthWords(first: string): string {
  return new Intl.DateTimeFormat(undefined, { month: 'short', timeZone: 'UTC' }).format(
    new Date(`${first}T00:00:00Z`),
  );
}
