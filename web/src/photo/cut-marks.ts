import type { LongStem } from '../../../core/report.ts';
import type { Point } from './points.ts';

/** Where one cut mark and its number are drawn, in photo px. */
export interface CutMark {
  readonly number: number;
  readonly stem: LongStem;
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

/** The long stems in the order of their numbers: clockwise about the ball's centre from the top. */
export function numberedStems(stems: readonly LongStem[], centre: Point): LongStem[] {
  return [...stems].sort((a, b) => turnFromTop(a.tipPx, centre) - turnFromTop(b.tipPx, centre));
}

/** Numbers the long stems clockwise from the top and spreads their labels round the ball. */
export function layOutCutMarks(stems: readonly LongStem[], layout: CutMarkLayout): CutMark[] {
  const { centrePx, barPx, labelPx, gapPx } = layout;
  const placed = numberedStems(stems, centrePx).map((stem) => ({
    stem,
    turn: turnFromTop(stem.tipPx, centrePx),
    reach: distance(stem.tipPx, centrePx),
  }));
  const furthest = Math.max(layout.radiusPx, ...placed.map(({ reach }) => reach)) + labelPx;
  const turns = spread(
    placed.map(({ turn }) => turn),
    gapPx / furthest,
  );
  return placed.map(({ stem }, index) => ({
    number: index + 1,
    stem,
    bar: barAcross(stem.tipPx, stem.cutPx, barPx),
    label: pointAt(centrePx, turns[index] as number, furthest),
  }));
}

/** The place of a label that lies `inPx` inside the cut, towards the ball's centre. */
export function insideLabel({ stem, label }: CutMark, centre: Point, inPx: number): Point {
  return pointAt(centre, turnFromTop(label, centre), Math.max(distance(stem.cutPx, centre) - inPx, 0));
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
