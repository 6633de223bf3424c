import { followCorners, goodCorners, type PointPair } from '../../opencv/corners.ts';
import type { OpenCvDoor } from '../../opencv/door.ts';
import type { GreyPicture } from '../../opencv/grey-pictures.ts';
import { warpGrey } from '../../opencv/warp-grey.ts';
import type { Mask, PointPx } from '../../raster/raster.ts';
import { likeness } from './likeness.ts';
import { inverseOf, moved, type Similarity } from './similarity.ts';

/** A picture's detail and what in it is not to be looked at. */
export interface Seen {
  readonly detail: GreyPicture;
  /** Plant and pot, of any size; `null` when not known. */
  readonly moving: Mask | null;
}

const MOST_CORNERS = 600;
const CORNER_DISTANCE_SHARE = 0.012;
const LEAST_CORNER_DISTANCE_PX = 5;
/** Half the side of the patch whose likeness is judged, px, and the least likeness of one that is the same thing. */
const PATCH_PX = 10;
const LEAST_LIKENESS = 0.7;

/** Corners of the reference to be followed, where neither picture shows plant or pot once the photo is moved by `start`. */
export function cornersOf(door: OpenCvDoor, photo: Seen, reference: Seen, start: Similarity): PointPx[] {
  const { width, height } = reference.detail;
  const back = inverseOf(start);
  const still = new Uint8Array(width * height).fill(1);
  const looksAway = reference.moving !== null || photo.moving !== null;
  for (let row = 0, i = 0; looksAway && row < height; row++) {
    for (let column = 0; column < width; column++, i++) {
      const place: PointPx = [column + 0.5, row + 0.5];
      if (isMoving(reference, place) || isMoving(photo, moved(back, place))) still[i] = 0;
    }
  }
  const distancePx = Math.max(LEAST_CORNER_DISTANCE_PX, CORNER_DISTANCE_SHARE * Math.max(width, height));
  return goodCorners(door, reference.detail, MOST_CORNERS, distancePx, { width, height, data: still });
}

/**
 * Follows corners of the reference into the photo, which is first brought near by `start`.
 *
 * @returns pairs photo → reference, px, only such whose surroundings look alike, the most alike first
 */
export function followFromReference(
  door: OpenCvDoor,
  photo: Seen,
  reference: Seen,
  start: Similarity,
  corners: readonly PointPx[],
): PointPair[] {
  const { detail } = reference;
  const brought = warpGrey(door, photo.detail, start, detail);
  const back = inverseOf(start);
  const isStill = ({ to }: PointPair): boolean => {
    const place = moved(back, to);
    return isInside(place, photo.detail) && !isMoving(photo, place);
  };
  const alikeness = ({ from, to }: PointPair) => likeness(detail, from, brought, to, PATCH_PX);
  const isWorthwhile = (pair: PointPair) => isStill(pair) && alikeness(pair) >= LEAST_LIKENESS;
  const judged = followCorners(door, detail, brought, corners, isWorthwhile).map((pair) => ({
    pair: { from: moved(back, pair.to), to: pair.from },
    alike: alikeness(pair),
  }));
  return judged.sort((one, other) => other.alike - one.alike).map(({ pair }) => pair);
}

function isInside([x, y]: PointPx, { width, height }: GreyPicture): boolean {
  return x >= PATCH_PX && y >= PATCH_PX && x < width - PATCH_PX && y < height - PATCH_PX;
}

function isMoving({ detail, moving }: Seen, [x, y]: PointPx): boolean {
  if (moving === null) return false;
  const column = Math.min(moving.width - 1, Math.max(0, Math.floor((x * moving.width) / detail.width)));
  const row = Math.min(moving.height - 1, Math.max(0, Math.floor((y * moving.height) / detail.height)));
  return moving.data[row * moving.width + column] === 1;
}
