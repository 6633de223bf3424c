import type { RimByHand } from '../../../../core/stand/rim-by-hand.ts';
import type { View } from '../../../../server/schemas/sitting.ts';
import type { Box, Point } from '../../photo/points.ts';

/** What can be taken hold of: either end of the rim, or the axis, which takes both along. */
export const RIM_HANDLES = ['left', 'axis', 'right'] as const;
export type RimHandle = (typeof RIM_HANDLES)[number];

export const HANDLE_WORDS: Readonly<Record<RimHandle, string>> = {
  left: 'Left end of the rim',
  axis: 'The plant’s axis, with the rim',
  right: 'Right end of the rim',
};

/** Ends of a rim lie at least this far apart, share of the photo's width; the server asks for as much. */
const LEAST_WIDTH_SHARE = 0.02;
/** Where a rim is begun on a photo in which none was found: height and half-width as shares of the photo. */
const FIRST_GUESS = { down: 0.72, half: 0.15 };

/** The rim that a photo's numbers rest on; a first guess where it has none. */
export function rimOf({ report, rimByHand, widthPx, heightPx }: View): RimByHand {
  if (rimByHand) return rimByHand;
  if (report?.axis) return { leftPx: report.axis.rimLeftPx, rightPx: report.axis.rimRightPx };
  const y = FIRST_GUESS.down * heightPx;
  return {
    leftPx: [(0.5 - FIRST_GUESS.half) * widthPx, y],
    rightPx: [(0.5 + FIRST_GUESS.half) * widthPx, y],
  };
}

export function handlePlace({ leftPx, rightPx }: RimByHand, handle: RimHandle): Point {
  if (handle === 'left') return leftPx;
  if (handle === 'right') return rightPx;
  return [(leftPx[0] + rightPx[0]) / 2, (leftPx[1] + rightPx[1]) / 2];
}

/** The rim after a handle was moved to a place; it stays on the photo, and its ends apart. */
export function withHandleAt(rim: RimByHand, handle: RimHandle, [x, y]: Point, photo: Box): RimByHand {
  const least = LEAST_WIDTH_SHARE * photo.width;
  const down = between(y, 0, photo.height);
  if (handle === 'left') {
    return { ...rim, leftPx: [between(x, 0, rim.rightPx[0] - least), down] };
  }
  if (handle === 'right') {
    return { ...rim, rightPx: [between(x, rim.leftPx[0] + least, photo.width), down] };
  }
  const [fromX, fromY] = handlePlace(rim, 'axis');
  const [left, right] = [rim.leftPx, rim.rightPx];
  const across = between(x - fromX, -left[0], photo.width - right[0]);
  const below = between(y - fromY, -Math.min(left[1], right[1]), photo.height - Math.max(left[1], right[1]));
  return {
    leftPx: [left[0] + across, left[1] + below],
    rightPx: [right[0] + across, right[1] + below],
  };
}

function between(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}

/** The part of the photo around the rim that is shown first. */
export function roomAroundRim({ leftPx, rightPx }: RimByHand): Box {
  const width = rightPx[0] - leftPx[0];
  const y = (leftPx[1] + rightPx[1]) / 2;
  return { x: leftPx[0] - 0.45 * width, y: y - 0.9 * width, width: 1.9 * width, height: 1.6 * width };
}
