import {
  chained,
  inverseOf,
  type Similarity,
  similarityAbout,
} from '../../../core/stand/frame/similarity.ts';
import type { View } from '../../../server/schemas/sitting.ts';
import { placeOf } from '../film/film-photos.ts';
import { alignOn } from '../photo/alignment.ts';

/** How one photo lies on another: the move from its px to the other's, and what the two were matched by. */
export interface LaidOn {
  readonly move: Similarity;
  readonly by: 'stand' | ReturnType<typeof alignOn>['by'];
}

/**
 * Lays `over` on `under`: by what stands still in both where their reports tell it and the camera place is one, else by their
 * rims and scales.
 */
export function layOn(under: View, over: View): LaidOn {
  const [ground, moved] = [standMove(under), standMove(over)];
  const isOnePlace = placeOf(under) === placeOf(over);
  const isOneSize = under.widthPx === over.widthPx && under.heightPx === over.heightPx;
  if (ground && moved && isOnePlace && isOneSize) {
    return { move: chained(moved, inverseOf(ground)), by: 'stand' };
  }
  const { scale, shiftX, shiftY, by } = alignOn(under, over);
  return { move: { a: scale, b: 0, shiftX, shiftY }, by };
}

/** From the photo's px to the stand's picture; `null` where the report does not tell it. */
function standMove({ report, widthPx, heightPx }: View): Similarity | null {
  if (!report?.frame || report.frame.standing === 'far') return null;
  return inverseOf(similarityAbout([widthPx / 2, heightPx / 2], report.frame));
}
