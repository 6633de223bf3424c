import { profilePoints, type RadialProfile } from '../silhouette/radial-profile.ts';
import { minimumZoneCircle } from './minimum-zone-circle.ts';

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
  if (form.radiiPx.length < 3) return null;
  const zone = minimumZoneCircle(profilePoints(form));
  if (zone === null || !(zone.outerRadius > 0)) return null;
  return {
    score: (100 * zone.innerRadius) / zone.outerRadius,
    outOfRoundPx: zone.outerRadius - zone.innerRadius,
  };
}
