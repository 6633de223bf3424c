import { smoothStep, valueAt } from '../geometry/keyframes.ts';
import type { Chance } from '../geometry/seeded-random.ts';
import type { Cut, PlantSpec } from './plant-spec.ts';
import type { ShootPath, Skeleton } from './skeleton.ts';

/** Weeks a leaf takes to reach full size. */
const LEAF_GROWING_WEEKS = 4.5;
/** Length of the tip that carries leaves not yet full grown, mm. */
const TIP_LEAVES_MM = 34;
/** How long the leaves before the season's start had already been growing. */
const EARLIEST_WEEK = -14;

/** A leaf joint on a shoot that has formed. */
export interface Joint {
  readonly index: number;
  readonly alongMm: number;
  readonly ageWeeks: number;
  /** Share of full size, 0 to 1. */
  readonly grown: number;
}

/** A shoot as it stands in one week. */
export interface StandingShoot {
  readonly path: ShootPath;
  readonly lengthMm: number;
  /** Its length without any cut: a cut leaves the leaves below it as they were. */
  readonly uncutMm: number;
  readonly joints: readonly Joint[];
  readonly cut: boolean;
}

/**
 * The shoot in a given week, or `null` when it has not started or was taken off.
 *
 * A joint stays where it formed; only the tip moves on. So the same plant is seen every week.
 */
export function standingShoot(
  spec: PlantSpec,
  skeleton: Skeleton,
  path: ShootPath,
  week: number,
  cuts: readonly Cut[],
  chance: Chance,
): StandingShoot | null {
  const stop = spec.deepStop;
  if (stop && path.flush === 0 && week >= stop.week) return stubOf(path, chance);
  const fullMm = shootLength(spec, skeleton, path, week, chance);
  const shortenMm = cuts.filter((cut) => cut.shoot === path.id).reduce((sum, cut) => sum + cut.shortenMm, 0);
  const lengthMm = fullMm - shortenMm;
  if (lengthMm < 4) return null;
  const joints: Joint[] = [];
  const spacing = spec.internodeMm * (path.long ? 1.35 : 1);
  let alongMm = spacing * chance.between(0.25, 0.9, 60, path.id);
  for (let index = 0; alongMm < lengthMm - 1; index++) {
    const ageWeeks = weeksSince(spec, skeleton, path, alongMm, week, chance);
    const pace = chance.between(0.85, 1.2, 61, path.id, index);
    const aged = smoothStep(-0.6, LEAF_GROWING_WEEKS * pace, ageWeeks);
    // However slowly a shoot grows, the leaves at its very tip are the young ones.
    const fromTip = smoothStep(-4, TIP_LEAVES_MM, fullMm - alongMm);
    const grown = 0.14 + 0.86 * Math.min(aged, 0.12 + 0.88 * fromTip);
    joints.push({ index, alongMm, ageWeeks, grown });
    alongMm += spacing * chance.between(0.75, 1.25, 62, path.id, index);
  }
  return { path, lengthMm, uncutMm: fullMm, joints, cut: shortenMm > 0 };
}

/** What a deep stop leaves of a shoot: a short bare end, on some shoots only. */
function stubOf(path: ShootPath, chance: Chance): StandingShoot | null {
  if (chance.uniform(63, path.id) < 0.45) return null;
  const lengthMm = chance.between(6, 20, 64, path.id);
  return { path, lengthMm, uncutMm: lengthMm, joints: [], cut: true };
}

/** Length of the shoot in a week, mm: its tip keeps to the canopy's radius of that week. */
function shootLength(
  spec: PlantSpec,
  skeleton: Skeleton,
  path: ShootPath,
  week: number,
  chance: Chance,
): number {
  const largest = skeleton.largestRadiusMm;
  const leafAllowance = spec.leaf.radiusMm * 0.62;
  if (path.flush === 1 && spec.deepStop) {
    const start = spec.deepStop.week + spec.deepStop.restWeeks + chance.between(0, 1.6, 65, path.id);
    if (week <= start) return 0;
  }
  const frames = path.flush === 1 && spec.deepStop ? spec.deepStop.radiusMm : spec.radiusMm;
  const radius = valueAt(frames, week) * path.vigour;
  const share = (radius - leafAllowance - path.forkRadiusMm) / (largest - leafAllowance - path.forkRadiusMm);
  const excess = path.long ? valueAt(path.long.excessMm, week) : 0;
  return path.curve.lengthMm * Math.max(0, share) + excess;
}

/** Weeks since the tip passed a place on the shoot; found by stepping back a quarter week at a time. */
function weeksSince(
  spec: PlantSpec,
  skeleton: Skeleton,
  path: ShootPath,
  alongMm: number,
  week: number,
  chance: Chance,
): number {
  for (let back = 0.25; week - back >= EARLIEST_WEEK; back += 0.25) {
    if (shootLength(spec, skeleton, path, week - back, chance) < alongMm) return back - 0.25;
  }
  return week - EARLIEST_WEEK;
}
