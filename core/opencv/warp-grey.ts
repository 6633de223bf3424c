import type { OpenCvDoor } from './door.ts';
import { type GreyPicture, matOfGrey } from './grey-pictures.ts';

/** `[x, y]` goes to `[a x - b y + shiftX, b x + a y + shiftY]`: a turn, a zoom and a shift. */
interface PlaneMove {
  readonly a: number;
  readonly b: number;
  readonly shiftX: number;
  readonly shiftY: number;
}

/**
 * A grey picture moved by a similarity onto a picture of the given size, straight-line between pixels; 128 where nothing
 * comes to lie.
 *
 * @param move px of the picture to px of the result, pixel centres at +0.5
 */
export function warpGrey(
  door: OpenCvDoor,
  picture: GreyPicture,
  { a, b, shiftX, shiftY }: PlaneMove,
  { width, height }: { readonly width: number; readonly height: number },
): GreyPicture {
  return door.use((cv, keep) => {
    const matrix = keep(new cv.Mat(2, 3, cv.CV_64FC1));
    // OpenCV counts from the middle of the first pixel.
    const halfX = 0.5 * (a - b - 1);
    const halfY = 0.5 * (b + a - 1);
    matrix.data64F.set([a, -b, shiftX + halfX, b, a, shiftY + halfY]);
    const to = keep(new cv.Mat());
    const size = new cv.Size(width, height);
    const grey = new cv.Scalar(128, 128, 128, 255);
    const from = matOfGrey(cv, keep, picture);
    cv.warpAffine(from, to, matrix, size, cv.INTER_LINEAR, cv.BORDER_CONSTANT, grey);
    return { width, height, data: to.data.slice() };
  });
}
