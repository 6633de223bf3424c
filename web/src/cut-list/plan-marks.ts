import type { PlanReach } from '../../../core/turned/measure-turned.ts';
import type { NumberedMark } from '../photo/cut-marks.ts';
import type { Point } from '../photo/points.ts';
import { placeAt } from '../plan/azimuth.ts';
import { percentPerMm, reachAt } from '../plan/plan-shape.ts';
import { isPlanned, type ListedCut } from './listed-cut.ts';

/** A cut on the plan; places in % of the ball's radius, as the plan is drawn. */
export interface PlanMark extends NumberedMark {
  readonly id: string;
  /** Not to be made. */
  readonly left: boolean;
  readonly done: boolean;
}

/** Where the cuts lie seen from above: a stem near the top stands near the middle. Without mm they are put at the reach of their side. */
export function planMarks(cuts: readonly ListedCut[], reach: readonly PlanReach[]): PlanMark[] {
  const scale = percentPerMm(reach);
  return cuts.flatMap((cut) => {
    const { azimuthDeg, tipMm, cutMm } = cut;
    if (azimuthDeg === null) return [];
    const edge = reachAt(reach, azimuthDeg)?.percent ?? 100;
    const [tipPx, cutPx] =
      scale !== null && tipMm !== null && cutMm !== null
        ? [fromAbove(tipMm, scale), fromAbove(cutMm, scale)]
        : [placeAt(azimuthDeg, edge), placeAt(azimuthDeg, Math.max(edge - cut.takeOffPercent, 0))];
    return [
      { id: cut.id, number: cut.number, tipPx, cutPx, left: !isPlanned(cut), done: cut.state === 'done' },
    ];
  });
}

/** u runs towards azimuth 0, at the drawing's foot, and v towards azimuth 90, at its right. */
function fromAbove([u, v]: readonly [number, number, number], scale: number): Point {
  return [v * scale, u * scale];
}
