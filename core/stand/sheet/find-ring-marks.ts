import type { OpenCvDoor } from '../../opencv/door.ts';
import type { Raster } from '../../raster/raster.ts';
import { type Ellipse, ellipseAxes } from './ellipse-of-outline.ts';
import { type FittedMark, fitRingMark } from './fit-ring-mark.ts';
import { luminancePlane } from './light-plane.ts';
import { RING_KINDS } from './ring-kinds.ts';
import type { RingMark } from './ring-mark.ts';
import { ringSeeds } from './ring-seeds.ts';

/**
 * Finds the stand sheet's ring marks in a photo.
 *
 * @param raster upright photo
 * @returns marks, surest first; empty when there are none. Px of the raster
 *
 * Notes: outlines nested about one another are the seeds (Suzuki, Abe 1985, topological structural analysis); each is
 * fitted as each kind of mark on rays from its middle, in linear light, and stays only if it looks like the kind all the
 * way round. A mark needs to be 14 px across; how much blur it bears grows with its size (about 0.6 of a ring's width).
 */
export function findRingMarks(door: OpenCvDoor, raster: Raster): RingMark[] {
  const plane = luminancePlane(raster);
  const found: FittedMark[] = [];
  for (const seed of distinctSeeds(ringSeeds(door, raster))) {
    for (const kind of RING_KINDS) {
      const fitted = fitRingMark(plane, seed, kind);
      if (fitted !== null) found.push(fitted);
    }
  }
  found.sort((one, other) => other.likeness - one.likeness);
  const kept: FittedMark[] = [];
  for (const fitted of found) {
    if (!kept.some(({ mark }) => overlap(mark, fitted.mark))) kept.push(fitted);
  }
  return kept.map(({ mark }) => mark);
}

function overlap(one: RingMark, other: RingMark): boolean {
  const apart = Math.hypot(one.centrePx[0] - other.centrePx[0], one.centrePx[1] - other.centrePx[1]);
  return apart < Math.max(one.radiusPx, other.radiusPx);
}

/** The same outline is found at several sizes of the picture: one of each is enough to start from. */
function distinctSeeds(seeds: readonly Ellipse[]): Ellipse[] {
  const kept: Ellipse[] = [];
  for (const seed of seeds) if (!kept.some((other) => isAlike(seed, other))) kept.push(seed);
  return kept;
}

function isAlike(one: Ellipse, other: Ellipse): boolean {
  const [size, otherSize] = [ellipseAxes(one.shape).longer, ellipseAxes(other.shape).longer];
  const apart = Math.hypot(one.centrePx[0] - other.centrePx[0], one.centrePx[1] - other.centrePx[1]);
  return apart < 0.06 * size && Math.abs(size - otherSize) < 0.06 * size;
}
