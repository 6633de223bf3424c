import type { Mask, PointPx } from '../raster/raster.ts';
import type { PhotoReport } from '../report.ts';
import { readSilhouette } from '../silhouette/silhouette.ts';
import type { Cut } from './cut.ts';
import { type ForetoldView, foretellView } from './foretold-view.ts';

/**
 * Foretells a single photo.
 *
 * @param photo its report, and its canopy of any size
 * @param cuts of its list, px of the photo as stored upright; those without a place in it are left out
 * @param chosen names of the cuts that are made
 * @returns `null` when the photo has no ball to cut to
 */
export function foretellPhoto(
  { report, canopy }: { readonly report: PhotoReport; readonly canopy: Mask },
  cuts: readonly Pick<Cut, 'id' | 'tipPx' | 'cutPx'>[],
  chosen: ReadonlySet<string>,
): ForetoldView | null {
  const { ball, axis, widthPx } = report;
  const silhouette = readSilhouette(canopy);
  if (ball === null || widthPx === null || silhouette === null) return null;
  const reduced = canopy.width / widthPx;
  const inMask = ([x, y]: PointPx): PointPx => [x * reduced, y * reduced];
  const centrePx = inMask(ball.centrePx);
  return foretellView(
    {
      index: 0,
      before: report,
      silhouette,
      rim: axis && { rimLeftPx: inMask(axis.rimLeftPx), rimRightPx: inMask(axis.rimRightPx) },
      cuts: cuts.flatMap(({ id, tipPx, cutPx }) => {
        if (tipPx === null || cutPx === null) return [];
        const [tip, cut] = [inMask(tipPx), inMask(cutPx)];
        const radiusPx = Math.hypot(cut[0] - centrePx[0], cut[1] - centrePx[1]);
        return [{ id, tipPx: tip, cutPx: cut, ball: { centrePx, radiusPx } }];
      }),
      toPhoto: ([x, y]) => [x / reduced, y / reduced],
    },
    chosen,
  );
}
