import type { PointPx } from '../raster/raster.ts';
import { profilePoints, type RadialProfile } from '../silhouette/radial-profile.ts';
import { minimumZoneCircle } from './minimum-zone-circle.ts';

/** The rim's ends are known to the px at best. */
const RIM_CLEARANCE_PX = 1;

export interface Roundness {
  /** 0–100. */
  readonly score: number;
  /** RONt about the minimum-zone centre, px. */
  readonly outOfRoundPx: number;
}

/**
 * Out of round and roundness of the form profile.
 *
 * Out of round (RONt) is outermost minus innermost radius about the minimum-zone centre; roundness is
 * 100 × innermost ÷ outermost.
 *
 * @param form profile smoothed to form, px
 * @returns roundness 0–100 and out of round in px, or `null` when the profile fixes no circle
 *
 * Notes: an oval of 1.25 : 1 has 80 (the filter passes 98.8 % of an oval, so 80.2 is read). A long stem counts, by
 * as much of it as the filter leaves. Perimeter-based circularity is not used: drawn discs read 0.90 by it.
 *
 * Reference: ISO 12181-1:2011 (MZCI, RONt); the ratio is our own and equals Riley's (1941) squared with both
 * circles about one centre.
 *
 * Example: radii between 80 and 100 px give 80 and 20 px.
 */
export function roundnessOf(form: RadialProfile): Roundness | null {
  const points = clearOfRim(form);
  if (points.length < 3) return null;
  const zone = minimumZoneCircle(points);
  if (zone === null || !(zone.outerRadius > 0)) return null;
  return {
    score: (100 * zone.innerRadius) / zone.outerRadius,
    outOfRoundPx: zone.outerRadius - zone.innerRadius,
  };
}

/** Leaves out the px at each end of an open arc in which rim and canopy meet: its edge belongs to both. */
export function clearOfRim(form: RadialProfile): PointPx[] {
  const points = profilePoints(form);
  if (form.closed) return points;
  const stepsAt = (radiusPx: number) => Math.ceil(RIM_CLEARANCE_PX / (form.stepRad * Math.max(radiusPx, 1)));
  return points.slice(
    stepsAt(form.radiiPx[0] as number),
    points.length - stepsAt(form.radiiPx.at(-1) as number),
  );
}
