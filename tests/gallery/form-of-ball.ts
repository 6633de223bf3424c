import type { MeasuredPhoto } from '../../core/measure-photo.ts';
import { fitBall } from '../../core/measures/ball.ts';
import { type CircularZone, minimumZoneCircle } from '../../core/measures/minimum-zone-circle.ts';
import { clearOfRim } from '../../core/measures/roundness.ts';
import type { PointPx, UprightPhoto } from '../../core/raster/raster.ts';
import { profilePoints } from '../../core/silhouette/radial-profile.ts';
import { readSilhouette } from '../../core/silhouette/silhouette.ts';

/** What stands behind ball and roundness, px of the photo as stored upright. */
export interface FormOfBall {
  /** The smoothed outline over the open arc. */
  readonly profilePx: readonly PointPx[];
  /** Whether the profile's end joins its start. */
  readonly closed: boolean;
  /** The tightest two circles that hold the profile between them. */
  readonly zone: CircularZone;
}

/** Takes the form profile and its minimum zone once more, as core did for the report, which keeps only scores. */
export function formOfBall({ found, report }: MeasuredPhoto, photo: UprightPhoto): FormOfBall | null {
  if (found === null || report.ball === null) return null;
  const silhouette = readSilhouette(found.canopy);
  const ball = silhouette === null ? null : fitBall(silhouette, found.pot);
  const zone = ball === null ? null : minimumZoneCircle(clearOfRim(ball.form));
  if (ball === null || zone === null) return null;
  const across = photo.widthPx / photo.raster.width;
  const down = photo.heightPx / photo.raster.height;
  const along = (across + down) / 2;
  const inPhoto = ([x, y]: PointPx): PointPx => [x * across, y * down];
  return {
    profilePx: profilePoints(ball.form).map(inPhoto),
    closed: ball.form.closed,
    zone: {
      centre: inPhoto(zone.centre),
      innerRadius: zone.innerRadius * along,
      outerRadius: zone.outerRadius * along,
    },
  };
}
