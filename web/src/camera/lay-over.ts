import type { View } from '../../../server/schemas/sitting.ts';
import type { StandOverlay } from '../../../server/schemas/stand.ts';
import type { Box, Point } from '../photo/points.ts';

/** What lies over the live picture, px of a photo of `widthPx` × `heightPx`. */
export type LayOver = Pick<
  StandOverlay,
  'widthPx' | 'heightPx' | 'outlinePx' | 'outlineDay' | 'rim' | 'marksPx' | 'photoUrl'
>;

/** A plant without a stand is laid over with its newest measured photo. */
export function layOverOfView(view: View, day: LayOver['outlineDay']): LayOver {
  const axis = view.report?.axis ?? null;
  return {
    widthPx: view.widthPx,
    heightPx: view.heightPx,
    outlinePx: view.outlinePx,
    outlineDay: day,
    rim: axis && { leftPx: axis.rimLeftPx, rightPx: axis.rimRightPx },
    marksPx: [],
    photoUrl: view.pictureUrl,
  };
}

/**
 * The window of the earlier photo, in its px, that the live picture shows: middle on middle, width on width. A live
 * picture that is flatter than the photo is cut at top and foot by the camera, so the widths still agree.
 */
export function windowOfVideo(
  photo: { readonly widthPx: number; readonly heightPx: number },
  video: { readonly width: number; readonly height: number },
): Box {
  const height = (photo.widthPx * video.height) / video.width;
  return { x: 0, y: (photo.heightPx - height) / 2, width: photo.widthPx, height };
}

/** Whether one of the two is upright and the other lies on its side. */
export function isTurned(
  photo: { readonly widthPx: number; readonly heightPx: number },
  video: { readonly width: number; readonly height: number },
): boolean {
  return photo.widthPx > photo.heightPx !== video.width > video.height;
}

/** Half the length of the cross drawn through a ring mark, and the rim's line with ticks at its ends. */
export function crossPath([x, y]: Point, half: number): string {
  return `M${x - half} ${y}H${x + half}M${x} ${y - half}V${y + half}`;
}
