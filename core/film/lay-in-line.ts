import { inverseOf, moved, type Similarity, similarityAbout } from '../stand/frame/similarity.ts';
import type { FilmAbsence, FilmPhoto } from './film-photo.ts';

/** What a photo is held still by: what stands still in the picture, the pot's rim, or only the photo's own edges. */
export type HeldBy = 'stand' | 'rim' | 'edges';

/** A photo with the move that brings its px onto the film's stage, or why there is none. */
export type Laid =
  | { readonly photo: FilmPhoto; readonly toStage: Similarity; readonly heldBy: HeldBy }
  | { readonly photo: FilmPhoto; readonly absence: FilmAbsence };

/** Where leaves hide a rim, the photo is taken as it is if so many of the others lie still by theirs. */
const STILL_SHARE = 0.6;
/** A rim is read a few px wider or higher from photo to photo; within these shares of its width the camera has not moved. */
const STILL_WIDTH = 0.05;
const STILL_PLACE = 0.06;

/**
 * Lays photos of one camera place over each other so that the camera stands still.
 *
 * @param photos of one place, measured
 * @param stage size of the picture they are laid on, px
 * @returns each photo with its move, or why it cannot be laid
 *
 * Notes: by the frame that the report tells, where it tells one: what stands still in the picture then stands still in the film, and a
 * pot that was put down a little aside moves. Else by the pot's rim: the photo that stands in the middle of all
 * (by rim width) holds the stage; one whose rim lies within 5 % of its width and 6 % of its place is left as it is, since
 * that is how far rims are misread, any other is brought there. A photo whose rim leaves hide is left as it is where most of
 * the others are.
 */
export function layInLine(photos: readonly FilmPhoto[], stage: Size): Laid[] {
  const rims = photos
    .filter((photo) => isAsLarge(photo, stage))
    .flatMap((photo) => rimOf(photo, byFrame(photo) ?? STILL) ?? []);
  const middle = middleRim(rims);
  const still = rims.filter((rim) => middle !== null && moveOnto(rim, middle, true) === STILL);
  const mostAreStill = still.length >= STILL_SHARE * rims.length;
  return photos.map((photo) => {
    if (photo.report === null) return { photo, absence: 'waiting' };
    const { frame, notCompared } = photo.report;
    if (frame?.standing === 'far' || (frame === null && notCompared !== null)) {
      return { photo, absence: 'camera-moved' };
    }
    const asLarge = isAsLarge(photo, stage);
    const framed = byFrame(photo);
    if (framed !== null) {
      return asLarge ? { photo, toStage: framed, heldBy: 'stand' } : { photo, absence: 'other-size' };
    }
    const rim = rimOf(photo, STILL);
    if (middle !== null && rim !== null) {
      return { photo, toStage: moveOnto(rim, middle, asLarge), heldBy: 'rim' };
    }
    return asLarge && middle !== null && mostAreStill
      ? { photo, toStage: STILL, heldBy: 'edges' }
      : { photo, absence: 'nothing-to-hold' };
  });
}

/** The move that the photo's frame on its stand tells; `null` when it tells none. */
function byFrame({ report, widthPx, heightPx }: FilmPhoto): Similarity | null {
  if (!report?.frame) return null;
  return inverseOf(similarityAbout([widthPx / 2, heightPx / 2], report.frame));
}

/** A photo that lies as it was taken. */
const STILL: Similarity = { a: 1, b: 0, shiftX: 0, shiftY: 0 };

interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}

function isAsLarge(photo: Size, stage: Size): boolean {
  return photo.widthPx === stage.widthPx && photo.heightPx === stage.heightPx;
}

interface Rim {
  readonly xPx: number;
  readonly yPx: number;
  readonly widthPx: number;
}

function rimOf({ report }: FilmPhoto, move: Similarity): Rim | null {
  const axis = report?.axis;
  if (!axis) return null;
  const [left, right] = [moved(move, axis.rimLeftPx), moved(move, axis.rimRightPx)];
  return {
    xPx: (left[0] + right[0]) / 2,
    yPx: (left[1] + right[1]) / 2,
    widthPx: Math.hypot(right[0] - left[0], right[1] - left[1]),
  };
}

/** The middle of all rims, each number for itself. */
function middleRim(rims: readonly Rim[]): Rim | null {
  if (rims.length === 0) return null;
  const middle = (of: (rim: Rim) => number) => rims.map(of).sort((a, b) => a - b)[rims.length >> 1] as number;
  return {
    xPx: middle((rim) => rim.xPx),
    yPx: middle((rim) => rim.yPx),
    widthPx: middle((rim) => rim.widthPx),
  };
}

function moveOnto(rim: Rim, onto: Rim, asLarge: boolean): Similarity {
  const zoom = onto.widthPx / rim.widthPx;
  const isStill =
    asLarge &&
    Math.abs(zoom - 1) < STILL_WIDTH &&
    Math.hypot(onto.xPx - rim.xPx, onto.yPx - rim.yPx) < STILL_PLACE * onto.widthPx;
  if (isStill) return STILL;
  const a = asLarge && Math.abs(zoom - 1) < STILL_WIDTH ? 1 : zoom;
  return { a, b: 0, shiftX: onto.xPx - a * rim.xPx, shiftY: onto.yPx - a * rim.yPx };
}
