import type { PointPx } from '../raster/raster.ts';
import type { Homography } from '../stand/frame/frame-fit.ts';
import { applyHomography } from '../stand/frame/homography.ts';
import type { UprightView } from '../stand/upright-view.ts';
import { degOf, radOf } from './circular-statistics.ts';

/** How px of a photo and px of the level view belong together. */
export interface LevelView extends Pick<UprightView, 'toUpright' | 'toRaster'> {
  /** Px of the level view to px of the photo, as `toRaster` does. */
  readonly toPhoto: Homography;
}

/** What a level view is made from. Px of the photo. */
export interface LevelClues {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly focalLengthPx: number;
  /** By how much the picture is turned against upright, clockwise, degrees. */
  readonly rollDeg: number;
  /** How steeply the camera looks down on the rim's middle, degrees. */
  readonly elevationDeg: number;
  /** The rim's middle. */
  readonly rimPx: PointPx;
}

/** A direction from the camera: right, down, ahead. */
type Direction = readonly [right: number, down: number, ahead: number];

/**
 * The picture that a level camera in the same place would have taken, looking at the plant's axis: uprights stay parallel, and
 * lengths on the plane of the axis keep their proportions. In it the rim's middle lies at (0, 0).
 *
 * How: a turn of the camera about its own place, exact at any distance: back by the roll, then up by so much that the
 * rim's middle lies as far below the horizon as it was seen from above, then sideways to the axis.
 *
 * Notes: on the plane of the axis a px of the level view is as long as one of the photo at the rim times cos(elevation). A cropped photo does
 * little harm: the rim's own direction is taken from its elevation, not from the picture's middle.
 *
 * Reference: Hartley and Zisserman (2004), Multiple View Geometry, §8.4.2, the homography of a rotating camera.
 */
export function levelView({
  widthPx,
  heightPx,
  focalLengthPx: focalPx,
  rollDeg,
  elevationDeg,
  rimPx,
}: LevelClues): LevelView {
  const [rollCos, rollSin] = [Math.cos(radOf(rollDeg)), Math.sin(radOf(rollDeg))];
  const seen = ([x, y]: PointPx): Direction => {
    const [right, down] = [x - widthPx / 2, y - heightPx / 2];
    return [rollCos * right + rollSin * down, rollCos * down - rollSin * right, focalPx];
  };
  const rim = seen(rimPx);
  const pitchRad = pitchThatShows(rim, radOf(elevationDeg));
  const [pitchCos, pitchSin] = [Math.cos(pitchRad), Math.sin(pitchRad)];
  const lifted = ([right, down, ahead]: Direction): Direction => [
    right,
    down * pitchCos + ahead * pitchSin,
    ahead * pitchCos - down * pitchSin,
  ];
  const [rimRight, , rimAhead] = lifted(rim);
  const yawRad = Math.atan2(rimRight, rimAhead);
  const [yawCos, yawSin] = [Math.cos(yawRad), Math.sin(yawRad)];
  const rimDown = focalPx * Math.tan(radOf(elevationDeg));
  const toPhoto = homographyFrom((x, y) => {
    const down = y + rimDown;
    const right = x * yawCos + focalPx * yawSin;
    const ahead = focalPx * yawCos - x * yawSin;
    const depth = ahead * pitchCos + down * pitchSin;
    const [u, v] = [right * focalPx, (down * pitchCos - ahead * pitchSin) * focalPx];
    return [
      (widthPx / 2) * depth + rollCos * u - rollSin * v,
      (heightPx / 2) * depth + rollSin * u + rollCos * v,
      depth,
    ];
  });
  return {
    toUpright: (point) => {
      const [right, down, ahead] = lifted(seen(point));
      const depth = ahead * yawCos + right * yawSin;
      const scale = focalPx / depth;
      return [(right * yawCos - ahead * yawSin) * scale, down * scale - rimDown];
    },
    toRaster: (point) => applyHomography(toPhoto, point),
    toPhoto,
  };
}

/** The homography whose homogeneous places these are: they are linear in x and y. */
function homographyFrom(placeOf: (x: number, y: number) => Direction): Homography {
  const [origin, right, down] = [placeOf(0, 0), placeOf(1, 0), placeOf(0, 1)];
  return [0, 1, 2].flatMap((k) => {
    const at = origin[k] as number;
    return [(right[k] as number) - at, (down[k] as number) - at, at];
  }) as unknown as Homography;
}

const MOST_STEPS = 20;

/** How far the camera was tipped down, given how far below the horizon it saw one direction. */
function pitchThatShows([right, down, ahead]: Direction, belowRad: number): number {
  let pitchRad = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const [cos, sin] = [Math.cos(pitchRad), Math.sin(pitchRad)];
    const below = Math.atan2(down * cos + ahead * sin, Math.hypot(right, ahead * cos - down * sin));
    pitchRad += belowRad - below;
    if (Math.abs(belowRad - below) < 1e-12) break;
  }
  return pitchRad;
}

/** How steeply a camera looks down on a level ring, degrees, from the ring's ellipse: asin(height ÷ width). */
export function elevationOfRing({
  halfWidthPx,
  halfHeightPx,
}: {
  readonly halfWidthPx: number;
  readonly halfHeightPx: number;
}): number {
  return degOf(Math.asin(Math.min(1, halfHeightPx / halfWidthPx)));
}
