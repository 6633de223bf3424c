import { daysBetween } from '../../../core/day/day.ts';
import type { BenchTrendPoint } from '../../../server/schemas/pages.ts';
import styles from './Sparkline.module.css';
import { spanOf } from './series.ts';

const WIDTH = 120;
const HEIGHT = 36;
const EDGE = 5;

/** The roundness of all sittings at a glance, with its plus-minus as a band. */
export function Sparkline({ trend }: { trend: readonly BenchTrendPoint[] }) {
  const series = trend.flatMap(({ day, roundness: value, roundnessPlusMinus: plusMinus }) =>
    value === null ? [] : [{ day, value, plusMinus }],
  );
  const span = spanOf(series);
  const [first, last] = [series.at(0), series.at(-1)];
  if (!span || !first || !last || first === last) return null;
  // At least ten points of score from foot to head, so that noise does not look like a mountain.
  const room = Math.max(span.high - span.low, 10);
  const days = Math.max(daysBetween(first.day, last.day), 1);
  const at = series.map((point) => ({
    x: EDGE + (daysBetween(first.day, point.day) / days) * (WIDTH - 2 * EDGE),
    y: (value: number) => HEIGHT - EDGE - ((value - span.low) / room) * (HEIGHT - 2 * EDGE),
    ...point,
  }));
  const line = at.map(({ x, y, value }) => `${x.toFixed(1)} ${y(value).toFixed(1)}`);
  const upper = at.map(
    ({ x, y, value, plusMinus }) => `${x.toFixed(1)} ${y(value + (plusMinus ?? 0)).toFixed(1)}`,
  );
  const lower = at.map(
    ({ x, y, value, plusMinus }) => `${x.toFixed(1)} ${y(value - (plusMinus ?? 0)).toFixed(1)}`,
  );
  const end = at.at(-1);
  const words = `Roundness over ${series.length} sittings, from ${first.value.toFixed(0)} to ${last.value.toFixed(0)}`;
  return (
    <figure>
      <svg className={styles.spark} viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={words}>
        <path d={`M${upper.join('L')}L${lower.reverse().join('L')}Z`} className={styles.band} />
        <path d={`M${line.join('L')}`} className={styles.trace} />
        {end && <circle cx={end.x} cy={end.y(end.value)} r="3.4" className={styles.end} />}
      </svg>
      <figcaption className={styles.caption}>roundness, {series.length} sittings</figcaption>
    </figure>
  );
}
