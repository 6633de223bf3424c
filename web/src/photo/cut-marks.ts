import type { LongStem } from '../../../core/report.ts';
import type { Point } from './points.ts';

/** A stem to be shortened and the number it goes by; places in px of the drawing. */
export interface NumberedMark {
  readonly number: number;
  readonly tipPx: Point;
  readonly cutPx: Point;
}

/** A long stem of a photo's report under its number. */
export interface NumberedStem extends NumberedMark {
  readonly stem: LongStem;
}

/** Where one cut mark and its number are drawn. */
export interface PlacedMark<Mark extends NumberedMark> {
  readonly mark: Mark;
  /** The bar across the stem at which the tool shortens it. */
  readonly bar: readonly [Point, Point];
  readonly label: Point;
}

export interface CutMarkLayout {
  readonly centrePx: Point;
  readonly radiusPx: number;
  /** Half the length of the bar across the stem. */
  readonly barPx: number;
  /** Distance from tip to the middle of the label. */
  readonly labelPx: number;
  /** Least distance between the middles of two labels. */
  readonly gapPx: number;
}

/** The long stems numbered as the cut list works round the plant: from 6 o'clock on clockwise, at each hour from the top down. */
export function numberedStems(stems: readonly LongStem[]): NumberedStem[] {
  const hoursFromSix = ({ clock }: LongStem) => (clock + 6) % 12;
  return [...stems]
    .sort((a, b) => hoursFromSix(a) - hoursFromSix(b) || a.cutPx[1] - b.cutPx[1])
    .map((stem, index) => ({ number: index + 1, tipPx: stem.tipPx, cutPx: stem.cutPx, stem }));
}

/** Places the bars across the stems and spreads the labels round the ball. */
export function layOutCutMarks<Mark extends NumberedMark>(
  marks: readonly Mark[],
  layout: CutMarkLayout,
): PlacedMark<Mark>[] {
  const { centrePx, barPx, labelPx, gapPx } = layout;
  const placed = marks
    .map((mark) => ({
      mark,
      turn: turnFromTop(mark.tipPx, centrePx),
      reach: distance(mark.tipPx, centrePx),
    }))
    .sort((a, b) => a.turn - b.turn);
  const furthest = Math.max(layout.radiusPx, ...placed.map(({ reach }) => reach)) + labelPx;
  const turns = spread(
    placed.map(({ turn }) => turn),
    gapPx / furthest,
  );
  return placed.map(({ mark }, index) => ({
    mark,
    bar: barAcross(mark.tipPx, mark.cutPx, barPx),
    label: pointAt(centrePx, turns[index] as number, furthest),
  }));
}

/** The place of a label that lies `inPx` inside the cut, towards the ball's centre. */
export function insideLabel({ mark, label }: PlacedMark<NumberedMark>, centre: Point, inPx: number): Point {
  return pointAt(centre, turnFromTop(label, centre), Math.max(distance(mark.cutPx, centre) - inPx, 0));
}

/** Pushes sorted angles apart until neighbours keep `gap`; each pair shares the push. */
export function spread(turns: readonly number[], gap: number): number[] {
  const spaced = [...turns];
  for (let round = 0; round < 60; round++) {
    let moved = false;
    for (let i = 1; i < spaced.length; i++) {
      const lack = gap - ((spaced[i] as number) - (spaced[i - 1] as number));
      if (lack <= 1e-6) continue;
      spaced[i] = (spaced[i] as number) + lack / 2;
      spaced[i - 1] = (spaced[i - 1] as number) - lack / 2;
      moved = true;
    }
    if (!moved) break;
  }
  return spaced;
}

/** The bar square to the stem's way from cut to tip. */
export function barAcross(tip: Point, cut: Point, halfPx: number): readonly [Point, Point] {
  const length = distance(tip, cut) || 1;
  const across: Point = [-(tip[1] - cut[1]) / length, (tip[0] - cut[0]) / length];
  return [
    [cut[0] + across[0] * halfPx, cut[1] + across[1] * halfPx],
    [cut[0] - across[0] * halfPx, cut[1] - across[1] * halfPx],
  ];
}

/** Clockwise turn from straight up, 0 to 2π. */
function turnFromTop(point: Point, centre: Point): number {
  const turn = Math.atan2(point[0] - centre[0], centre[1] - point[1]);
  return turn < 0 ? turn + 2 * Math.PI : turn;
}

function pointAt(centre: Point, turn: number, reach: number): Point {
  return [centre[0] + reach * Math.sin(turn), centre[1] - reach * Math.cos(turn)];
}

function distance(a: Point, b: Point): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
