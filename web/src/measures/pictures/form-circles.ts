import { FORM_UPR, smoothProfile } from '../../../../core/measures/gaussian-profile-filter.ts';
import { type CircularZone, minimumZoneCircle } from '../../../../core/measures/minimum-zone-circle.ts';
import { clearOfRim } from '../../../../core/measures/roundness.ts';
import type { Axis, Ball } from '../../../../core/report.ts';
import { openArc } from '../../../../core/silhouette/open-arc.ts';
import { radialProfile } from '../../../../core/silhouette/radial-profile.ts';
import type { Point } from '../../photo/points.ts';

/** What roundness is read from, photo px. */
export interface FormCircles {
  /** The smoothed outline, where the pot does not hide it. */
  readonly form: readonly Point[];
  readonly zone: CircularZone;
}

/** The outline drawn here has fewer points than the one measured: so many points of roundness may lie between them. */
const NEAR_ENOUGH = 1;

/**
 * The smoothed outline and the two circles that hold it, from the outline as it is drawn.
 *
 * @returns `null` where they do not agree with the number that was measured: nothing is shown then rather than something else
 */
export function formCircles(
  outlinePx: readonly Point[],
  ball: Ball,
  axis: Axis | null,
  roundness: number,
): FormCircles | null {
  const profile = radialProfile([outlinePx], ball.centrePx, openArc(ball.centrePx, axis));
  const form = clearOfRim(smoothProfile(profile, FORM_UPR));
  const zone = form.length < 3 ? null : minimumZoneCircle(form);
  if (zone === null) return null;
  const read = (100 * zone.innerRadius) / zone.outerRadius;
  return Math.abs(read - roundness) <= NEAR_ENOUGH ? { form, zone } : null;
}
