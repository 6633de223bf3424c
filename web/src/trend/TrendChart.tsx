import * as Plot from '@observablehq/plot';
import { useEffect, useRef } from 'react';
import { addDays, type Day, day, daysBetween } from '../../../core/day/day.ts';
import type { TrendSegment } from '../../../core/trend/trend.ts';
import type { Stop } from '../../../server/schemas/sitting.ts';
import { said } from '../languages/speaker.ts';
import { useWidth } from '../photo/use-width.ts';
import { dayWords, shortDayWords, todayHere } from '../words/day-words.ts';
import { STOP_WORDS } from '../words/plant-words.ts';
import { spokenFigure } from '../words/spoken-figure.ts';
import { type SeriesPoint, spanOf } from './series.ts';
import styles from './TrendChart.module.css';
import { trendLine } from './trend-line.ts';
import { isShowDrawn, type PlacedMark, placedMarks, type TrendMark } from './trend-marks.ts';
import { isSize, TREND_NAMES, TREND_UNITS, type TrendMeasure } from './trend-measures.ts';
import { valueWords } from './trend-words.ts';
import { weekTicks } from './week-axis.ts';

interface TrendChartProps {
  measure: TrendMeasure;
  series: readonly SeriesPoint[];
  stops: readonly Stop[];
  segments: readonly TrendSegment[];
  showDay: string | null;
  marks: readonly TrendMark[];
  /** Days on which the pot was turned. */
  turned: readonly Day[];
}

/** The trend drawn: a band for the plus-minus, a dot a sitting, stops and show as upright lines, numbers for what was done or seen, weeks below. */
export default function TrendChart({
  measure,
  series,
  stops,
  segments,
  showDay,
  marks,
  turned,
}: TrendChartProps) {
  const place = useRef<HTMLElement>(null);
  const width = useWidth(place);
  useEffect(() => {
    const element = place.current;
    if (!element || width === 0) return;
    const chart = drawTrend({ measure, series, stops, segments, showDay, marks, turned }, width);
    // Named as a whole; the marks' own names say nothing to the ear.
    chart.setAttribute('aria-hidden', 'true');
    element.replaceChildren(chart);
    return () => chart.remove();
  }, [measure, series, stops, segments, showDay, marks, turned, width]);
  return (
    <figure
      ref={place}
      className={styles.chart}
      aria-label={`${TREND_NAMES[measure]} over the weeks; the table below says the same`}
    />
  );
}

function drawTrend(
  { measure, series, stops, segments, showDay, marks, turned }: TrendChartProps,
  width: number,
) {
  const today = todayHere();
  const days = [...series.map((point) => point.day), ...stops.map((stop) => day(stop.day))].sort();
  const first = days[0] as Day;
  // A short run still gets two weeks of room, so that two sittings do not stand at the two edges.
  const lastSeen = days.at(-1) as Day;
  const shows = showDay && isShowDrawn(day(showDay), first, lastSeen) ? [{ day: showDay }] : [];
  const last = shows.length > 0 && day(showDay as string) > lastSeen ? day(showDay as string) : lastSeen;
  const dayPx = (width - MARGIN.left - MARGIN.right) / Math.max(daysBetween(first, last) + 1, 1);
  const placed = placedMarks(
    // What was before the first sitting stands at the chart's edge.
    marks.map((mark) => (mark.day < first ? { ...mark, day: first } : mark)),
    Math.ceil((2 * MARK_PX + 2) / dayPx),
  );
  const rowCount = Math.max(0, ...placed.map(({ row }) => row + 1));
  const { low, high } = spanOf(series) as { low: number; high: number };
  const pad = Math.max((high - low) * 0.12, LEAST_ROOM[measure] / 2);
  const ticks = weekTicks(first, last, showDay ? day(showDay) : null, Math.floor(width / 76));
  const weekWords = (at: number) => {
    const tick = ticks[at];
    if (!tick) return '';
    const week = !showDay ? `week ${tick.week}` : tick.week === 0 ? 'Show' : `${tick.week} wk to go`;
    return `${shortDayWords(tick.day)}\n${said(week)}`;
  };
  const x = (point: { day: string }) => utc(point.day);
  const lines = segments.map((segment) => trendLine(segment, series)).filter((line) => line.length > 0);
  const withBand = series.filter((point) => point.plusMinus !== null);
  return Plot.plot({
    width,
    height: 300,
    marginTop: 34,
    marginBottom: 46,
    marginLeft: MARGIN.left,
    marginRight: MARGIN.right,
    style: { background: 'none', color: 'var(--ink)', fontSize: '13.5px', fontFamily: 'var(--face-text)' },
    x: { type: 'utc', domain: [utc(first), utc(addDays(last, 1))], label: null },
    y: {
      domain: yDomain(measure, low - pad, high + pad),
      label: null,
      grid: true,
      ticks: 5,
      ...(isSize(measure) && {
        tickFormat: (value: number) =>
          spokenFigure({ value: String(value), plusMinus: null, unit: TREND_UNITS[measure] }).value,
      }),
    },
    marks: [
      Plot.axisX(
        ticks.map((tick) => utc(tick.day)),
        { tickFormat: (_: Date, at: number) => weekWords(at), tickSize: 6, lineHeight: 1.2 },
      ),
      ...(measure === 'lopsidedness' ? [Plot.ruleY([0], { stroke: 'var(--line-strong)' })] : []),
      Plot.areaY(withBand, {
        x,
        y1: (point) => point.value - point.plusMinus,
        y2: (point) => point.value + point.plusMinus,
        fill: 'var(--band)',
      }),
      Plot.ruleX(stops, { x, stroke: 'var(--ink-soft)', strokeWidth: 1.5, strokeDasharray: '5 4' }),
      Plot.text(stops, {
        x,
        text: (stop: Stop) => said(STOP_WORDS[stop.depth]),
        frameAnchor: 'top',
        dy: -20,
        textAnchor: 'middle',
        fontWeight: 650,
        fill: 'var(--ink)',
      }),
      Plot.ruleX(shows, { x, stroke: 'var(--ink)', strokeWidth: 2.5 }),
      Plot.text(shows, {
        x,
        text: () => said('Show'),
        frameAnchor: 'top',
        dy: -20,
        textAnchor: 'end',
        fontWeight: 650,
        fill: 'var(--ink)',
      }),
      Plot.dot(turned, {
        x: (on: Day) => utc(on),
        frameAnchor: 'bottom',
        dy: -4,
        r: 4.5,
        symbol: 'triangle',
        fill: 'var(--ink)',
      }),
      Plot.ruleX(placed, { x, stroke: 'var(--line-strong)', strokeDasharray: '1 4' }),
      Plot.lineY(series, { x, y: 'value', stroke: 'var(--trace)', strokeWidth: 1.5, strokeOpacity: 0.6 }),
      ...lines.flatMap((line) => [
        ...(['low', 'high'] as const).map((end) =>
          Plot.lineY(line, { x, y: end, stroke: 'var(--ink)', strokeWidth: 1.2, strokeDasharray: '2 4' }),
        ),
        Plot.lineY(line, { x, y: 'value', stroke: 'var(--ink)', strokeWidth: 3 }),
      ]),
      Plot.dot(series, {
        x,
        y: 'value',
        r: 4.5,
        fill: 'var(--trace)',
        stroke: 'var(--ground)',
        strokeWidth: 1.5,
      }),
      ...Array.from({ length: rowCount }, (_, row) => drawMarks(placed, row)).flat(),
      Plot.tip(
        series,
        Plot.pointerX({
          x,
          y: 'value',
          title: (point: SeriesPoint) => `${dayWords(point.day, today)}\n${said(valueWords(point, measure))}`,
          fill: 'var(--sheet)',
          stroke: 'var(--line-strong)',
          fontSize: 15,
        }),
      ),
    ],
  });
}

const MARGIN = { left: 40, right: 24 };
/** Radius of a numbered mark. */
const MARK_PX = 10;

/** The numbered marks of one row, standing on the axis. */
function drawMarks(placed: readonly PlacedMark[], row: number) {
  const marks = placed.filter((mark) => mark.row === row);
  const place = {
    x: (mark: PlacedMark) => utc(mark.day),
    frameAnchor: 'bottom',
    dy: -(MARK_PX + 2) - row * (2 * MARK_PX + 3),
  } as const;
  return [
    Plot.dot(marks, { ...place, r: MARK_PX, fill: 'var(--sheet)', stroke: 'var(--ink)', strokeWidth: 1.5 }),
    Plot.text(marks, {
      ...place,
      text: (mark: PlacedMark) => String(mark.number),
      lineAnchor: 'middle',
      fontWeight: 650,
      fill: 'var(--ink)',
    }),
  ];
}

/** Room above and below that a flat trend still gets, in the measure's own unit. */
const LEAST_ROOM: Record<TrendMeasure, number> = {
  roundness: 8,
  symmetry: 8,
  lopsidedness: 8,
  size: 40,
  height: 40,
  width: 40,
  area: 100,
};

function yDomain(measure: TrendMeasure, low: number, high: number): [number, number] {
  if (measure === 'lopsidedness') return [Math.min(low, -5), Math.max(high, 5)];
  if (isSize(measure)) return [Math.max(low, 0), high];
  return [Math.max(low, 0), Math.min(high, 100)];
}

function utc(value: string): Date {
  return new Date(`${value}T00:00:00Z`);
}
