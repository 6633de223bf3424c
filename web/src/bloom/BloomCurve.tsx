import * as Plot from '@observablehq/plot';
import { useEffect, useRef } from 'react';
import { addDays, type Day } from '../../../core/day/day.ts';
import type { Stop } from '../../../server/schemas/sitting.ts';
import { said } from '../languages/speaker.ts';
import { useWidth } from '../photo/use-width.ts';
import marks from '../trend/MarkList.module.css';
import { weekTicks } from '../trend/week-axis.ts';
import { dayWords, shortDayWords } from '../words/day-words.ts';
import { STOP_WORDS } from '../words/plant-words.ts';
import styles from './BloomCurve.module.css';
import {
  bloomEvents,
  CURVE_CAPTION,
  eventWords,
  heardCurve,
  readingWords,
  type ToldBloom,
} from './bloom-words.ts';
import { type CurveFrame, curveFrame, shareOn } from './curve-frame.ts';

interface BloomCurveProps {
  bloom: ToldBloom;
  stops: readonly Stop[];
  showDay: string | null;
  today: Day;
}

/** The bloom drawn: a dot a sitting, the curve in its 90 % band, broken where foretold, the days of the bloom as numbered bars below. */
export default function BloomCurve({ bloom, stops, showDay, today }: BloomCurveProps) {
  const place = useRef<HTMLDivElement>(null);
  const width = useWidth(place);
  useEffect(() => {
    const element = place.current;
    if (!element || width === 0) return;
    const chart = drawCurve({ bloom, stops, showDay, today }, width);
    // Named as a whole above; the marks' own names say nothing to the ear.
    chart.setAttribute('aria-hidden', 'true');
    element.replaceChildren(chart);
    return () => chart.remove();
  }, [bloom, stops, showDay, today, width]);
  return (
    <figure>
      <figcaption className={styles.caption}>{CURVE_CAPTION}</figcaption>
      <div ref={place} role="img" className={styles.chart} aria-label={heardCurve(bloom, today)} />
      <ol className={marks.marks} aria-label="Days of the bloom">
        {bloomEvents(bloom).map((event) => (
          <li key={event.number}>
            <span className={marks.number}>{event.number}</span>
            <span>{eventWords(event, today)}</span>
          </li>
        ))}
      </ol>
    </figure>
  );
}

function drawCurve({ bloom, stops, showDay, today }: BloomCurveProps, width: number) {
  const frame = curveFrame(bloom, showDay, today);
  const { from, to, top, rowHeight, ticks } = frame;
  const events = bloomEvents(bloom);
  const inFrame = <Dated extends { day: string }>(list: readonly Dated[]) =>
    list.filter(({ day }) => day >= from && day <= to);
  const shows = inFrame(showDay === null ? [] : [{ day: showDay }]);
  const curve = inFrame(bloom.curve);
  const [seen, foretold] = [
    curve.filter(({ isForecast }) => !isForecast),
    // Joined to the last day that was seen, so that the line has no gap.
    curve.filter(({ isForecast }, at) => isForecast || curve[at + 1]?.isForecast),
  ];
  const readings = inFrame(bloom.readings);
  const weeks = weekTicks(from, to, null, Math.floor(width / 76));
  const x = ({ day }: { day: string }) => utc(day);
  const upright = { x, y1: 0, y2: top };
  return Plot.plot({
    width,
    height: 320,
    marginTop: 34,
    marginBottom: 30,
    marginLeft: 34,
    marginRight: 14,
    style: { background: 'none', color: 'var(--ink)', fontSize: '13.5px', fontFamily: 'var(--face-text)' },
    x: { type: 'utc', domain: [utc(from), utc(addDays(to, 1))], label: null },
    y: { domain: [-(events.length + 0.4) * rowHeight, top], label: null },
    marks: [
      Plot.axisX(
        weeks.map(({ day }) => utc(day)),
        { tickFormat: (_: Date, at: number) => shortDayWords(weeks[at]?.day ?? from), tickSize: 6 },
      ),
      Plot.axisY(ticks, { tickFormat: (value: number) => `${value}`, tickSize: 0 }),
      Plot.gridY(ticks),
      Plot.areaY(seen, {
        x,
        y1: (point) => 100 * point.low90,
        y2: (point) => 100 * point.high90,
        fill: 'var(--band)',
      }),
      Plot.areaY(foretold, {
        x,
        y1: (point) => 100 * point.low90,
        y2: (point) => 100 * point.high90,
        fill: 'var(--band)',
        fillOpacity: 0.45,
      }),
      ...(['low90', 'high90'] as const).map((end) =>
        Plot.lineY(foretold, {
          x,
          y: (point) => 100 * point[end],
          stroke: 'var(--trace)',
          strokeWidth: 1,
          strokeDasharray: '2 4',
        }),
      ),
      Plot.ruleY([0], { stroke: 'var(--line-strong)', strokeWidth: 1.5 }),
      Plot.ruleX(inFrame(stops), {
        ...upright,
        stroke: 'var(--ink-soft)',
        strokeWidth: 1.5,
        strokeDasharray: '5 4',
      }),
      Plot.text(inFrame(stops), { x, text: (stop: Stop) => said(STOP_WORDS[stop.depth]), ...ON_TOP }),
      Plot.ruleX(inFrame([{ day: today }]), {
        ...upright,
        stroke: 'var(--ink-soft)',
        strokeWidth: 1.5,
        strokeDasharray: '2 4',
      }),
      Plot.ruleX(shows, { ...upright, stroke: 'var(--ink)', strokeWidth: 2.5 }),
      Plot.text(shows, {
        x,
        text: () => said('Show'),
        ...ON_TOP,
        textAnchor: frame.isShowAtEnd ? 'end' : 'middle',
      }),
      Plot.lineY(seen, { x, y: (point) => 100 * point.share, stroke: 'var(--trace)', strokeWidth: 2.5 }),
      Plot.lineY(foretold, {
        x,
        y: (point) => 100 * point.share,
        stroke: 'var(--trace)',
        strokeWidth: 2.5,
        strokeDasharray: '7 5',
      }),
      ...drawEvents(bloom, frame),
      Plot.ruleX(
        readings.filter(({ plusMinus }) => plusMinus !== null),
        {
          x,
          y1: (one) => 100 * Math.max(one.share - (one.plusMinus ?? 0), 0),
          y2: (one) => 100 * (one.share + (one.plusMinus ?? 0)),
          stroke: 'var(--ink)',
          strokeWidth: 2,
        },
      ),
      Plot.dot(readings, {
        x,
        y: (one) => 100 * one.share,
        r: 4.5,
        fill: 'var(--trace)',
        fillOpacity: ({ day }) => (bloom.since && day < bloom.since.day ? 0.4 : 1),
        stroke: 'var(--ground)',
        strokeWidth: 1.5,
      }),
      Plot.tip(
        readings,
        Plot.pointerX({
          x,
          y: (one) => 100 * one.share,
          title: (one: (typeof readings)[number]) =>
            `${dayWords(one.day, today)}\n${readingWords(one)} in flower`,
          fill: 'var(--sheet)',
          stroke: 'var(--line-strong)',
          fontSize: 15,
        }),
      ),
    ],
  });
}

const ON_TOP = { frameAnchor: 'top', dy: -20, fontWeight: 650, fill: 'var(--ink)' } as const;
/** Radius of a numbered mark. */
const MARK_PX = 10;

/** Each day of the bloom below the ground line: a bar for its 90 % range, its number, and a thread up to the curve. */
function drawEvents(bloom: ToldBloom, { rowHeight, from, to }: CurveFrame) {
  const held = (day: string) => utc(day < from ? from : day > to ? to : day);
  const rows = bloomEvents(bloom).map(({ number, date, isOpen }) => ({
    isOpen,
    number,
    day: held(date.day),
    from90: held(date.from90),
    to90: held(date.to90),
    y: -(number - 0.4) * rowHeight,
    share: 100 * shareOn(bloom.curve, date.day),
  }));
  const place = { x: 'day', y: 'y' };
  return [
    Plot.ruleX(
      rows.filter(({ isOpen }) => !isOpen),
      {
        x: 'day',
        y1: 'y',
        y2: 'share',
        stroke: 'var(--ink-soft)',
        strokeWidth: 1,
        strokeDasharray: '1 3',
      },
    ),
    Plot.ruleY(rows, {
      x1: 'from90',
      x2: 'to90',
      y: 'y',
      stroke: 'var(--line-strong)',
      strokeWidth: 6,
      strokeLinecap: 'round',
    }),
    ...[false, true].map((isOpen) =>
      Plot.dot(
        rows.filter((row) => row.isOpen === isOpen),
        {
          ...place,
          r: MARK_PX,
          fill: 'var(--sheet)',
          stroke: 'var(--ink)',
          strokeWidth: 1.5,
          ...(isOpen ? { strokeDasharray: '3 3' } : {}),
        },
      ),
    ),
    Plot.text(rows, {
      ...place,
      text: (row: (typeof rows)[number]) => String(row.number),
      lineAnchor: 'middle',
      fontWeight: 650,
      fill: 'var(--ink)',
    }),
  ];
}

function utc(value: string): Date {
  return new Date(`${value}T00:00:00Z`);
}
