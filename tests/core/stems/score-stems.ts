import type { LongStemPx } from '../../../core/stems/long-stems.ts';
import type { Stem3D } from '../../../core/stems/stem-3d.ts';
import { turnBetween } from '../../../core/turned/circular-statistics.ts';
import type { PlantTruth } from '../../../sample-images/render/render-silhouette.ts';
import type { ShootInView } from '../../../sample-images/render/shoots-in-view.ts';
import { between, type Direction } from './stem-plants.ts';
import type { Tally } from './tally.ts';

/** Stems asked for stand out by this and more; a call is right where a shoot stands out by this less the error allowed. */
export const ASKED_MM = 20;
const ALLOWED_MM = 6;
/** A find this near a shoot, seen from the ball's centre, or on the photo, is that shoot's. */
const SAME_DEG = 30;
const SAME_MM = 50;

/** Scores the stems of a turned sitting against the known long shoots of the plant. */
export function scoreTurned(stems: readonly Stem3D[], truth: PlantTruth['stems'], tally: Tally): void {
  const called = stems.filter(({ excessMm }) => excessMm >= ASKED_MM);
  const used = new Set<Stem3D>();
  for (const shoot of truth.filter(({ long, excessMm }) => long && excessMm >= ASKED_MM)) {
    tally.asked++;
    const stem = nearest(called, used, (one) => between(one, shoot), SAME_DEG);
    if (stem === null) continue;
    used.add(stem);
    tally.found++;
    tally.excessOff.push(stem.excessMm - shoot.excessMm);
    tally.insidePlusMinus.push(Math.abs(stem.excessMm - shoot.excessMm) <= stem.plusMinusMm ? 1 : 0);
    tally.clockOffDeg.push(Math.abs(turnBetween(stem.azimuthDeg, shoot.azimuthDeg)));
  }
  const right = truth.filter(({ excessMm }) => excessMm >= ASKED_MM - ALLOWED_MM);
  tally.called += called.length;
  tally.wrong += called.filter(
    (stem) =>
      !used.has(stem) && !right.some((shoot) => between(stem, shoot) < SAME_DEG && !isOf(shoot, used)),
  ).length;
}

/** A shoot that another stem was counted for is no excuse for a second one. */
function isOf(shoot: Direction, used: ReadonlySet<Stem3D>): boolean {
  return [...used].some((stem) => between(stem, shoot) < SAME_DEG / 2);
}

/** Scores the stems of one photo against the shoots whose outermost point its silhouette shows. */
export function scorePhoto(
  stems: readonly LongStemPx[],
  photo: { longShoots: readonly ShootInView[]; others: readonly ShootInView[]; mmPerPx: number },
  tally: Tally,
): void {
  const { mmPerPx } = photo;
  const called = stems.filter(({ excessPx }) => excessPx * mmPerPx >= ASKED_MM);
  const used = new Set<LongStemPx>();
  const apart = (stem: LongStemPx, { outermostPx: [x, y] }: ShootInView) =>
    mmPerPx * Math.hypot(stem.tipPx[0] - x, stem.tipPx[1] - y);
  for (const shoot of photo.longShoots) {
    if (!shoot.onOutline || shoot.excessMm < ASKED_MM) continue;
    tally.asked++;
    const stem = nearest(called, used, (one) => apart(one, shoot), SAME_MM);
    if (stem === null) continue;
    used.add(stem);
    tally.found++;
    tally.excessOff.push(stem.excessPx * mmPerPx - shoot.excessMm);
  }
  const right = [...photo.longShoots, ...photo.others].filter(
    ({ excessMm }) => excessMm >= ASKED_MM - ALLOWED_MM,
  );
  tally.called += called.length;
  tally.wrong += called.filter(
    (stem) => !used.has(stem) && !right.some((shoot) => apart(stem, shoot) < SAME_MM / 2),
  ).length;
}

function nearest<Stem>(
  stems: readonly Stem[],
  used: ReadonlySet<Stem>,
  apart: (stem: Stem) => number,
  within: number,
): Stem | null {
  let best: Stem | null = null;
  let least = within;
  for (const stem of stems) {
    if (used.has(stem) || apart(stem) >= least) continue;
    best = stem;
    least = apart(stem);
  }
  return best;
}
