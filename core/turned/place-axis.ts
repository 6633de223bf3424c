import { median } from 'simple-statistics';
import { fitLopsidedness, type LopsidednessFit } from './lopsidedness-vector.ts';
import type { TurnedView } from './turned-view.ts';

/** The views with their axis where it stands, and how lopsided the plant is about it. */
export interface PlacedViews {
  readonly lopsided: LopsidednessFit;
  readonly views: readonly (TurnedView | null)[];
}

/**
 * Fits the lopsidedness to the views' middles and, where no rim tells the axis, finds the axis with it.
 *
 * @param views `null` for one that was not measured; those whose axis comes from the middles share one place for it
 */
export function placeAxis(views: readonly (TurnedView | null)[]): PlacedViews {
  const told = views.flatMap((view) =>
    view === null || view.turnDeg === null ? [] : [{ ...view, turnDeg: view.turnDeg }],
  );
  const toFind = told.some(({ axisFrom }) => axisFrom === 'middles');
  if (!toFind) return { lopsided: fitLopsidedness(told.map(offsetOf)), views };
  // One axis for all is one place in px, so all offsets have to be shares of one ball.
  const ballPx = median(told.map(({ ballRadiusPx }) => ballRadiusPx));
  const alike = told.map((view) => {
    const share = view.ballRadiusPx / ballPx;
    const { turnDeg, percent, plusMinus } = offsetOf(view);
    return { turnDeg, percent: percent * share, plusMinus: plusMinus * share };
  });
  const lopsided = fitLopsidedness(alike, 'axis-to-find');
  const asidePx = lopsided.ok ? (lopsided.axisAsidePercent / 100) * ballPx : 0;
  return {
    lopsided,
    views: views.map((view) => (view === null ? null : { ...view, axisXPx: view.axisXPx + asidePx })),
  };
}

function offsetOf(view: TurnedView & { readonly turnDeg: number }) {
  return {
    turnDeg: view.turnDeg,
    percent: view.lopsidednessPercent,
    plusMinus: view.lopsidednessPlusMinus,
  };
}
