import { lopsidednessPercent } from '../measures/lopsidedness.ts';
import { NORMAL_95 } from '../measures/plus-minus.ts';
import type { Mask } from '../raster/raster.ts';
import type { PhotoReport } from '../report.ts';
import { readSilhouette } from '../silhouette/silhouette.ts';
import { inverseOf, moved, similarityAbout } from '../stand/frame/similarity.ts';
import { boundsInView } from '../stand/redraw-mask.ts';
import { radOf } from './circular-statistics.ts';
import { maskInView } from './level-mask.ts';
import { levelView } from './level-view.ts';
import type { RimPlace } from './rim-places.ts';
import { USUAL_DISTANCE_IN_RADII } from './sight-lines.ts';
import type { SittingCamera } from './sitting-camera.ts';
import type { PotPlace, TurnedView } from './turned-view.ts';
import type { UsualBall } from './usual-ball.ts';

/** One view of a sitting as it was measured by itself. */
export interface TakenView {
  readonly report: PhotoReport;
  /** Canopy of any size, the whole photo; `null` when nothing was cut out. */
  readonly canopy: Mask | null;
  /** Focal length in px of the photo as stored upright; `null` when unknown. */
  readonly focalLengthPx: number | null;
  /** Level distance from camera to plant axis as told or read off the stand sheet, mm; `null` when unknown. */
  readonly cameraDistanceMm: number | null;
}

/** Edge of a canopy that fixes no circle, one standard deviation as a share of the usual ball: nothing better is known of it. Our own choice. */
const UNKNOWN_EDGE_SHARE = 0.02;

/**
 * Makes a turned view of a measured photo: its canopy drawn anew as a level camera would have seen it, with axis and rim.
 *
 * @param taken report and canopy of one photo
 * @param camera of the whole sitting
 * @param rim where its rim stands
 * @param usual ball of the sitting, for a photo that fixes none
 * @returns view in px of the level picture; `null` when the photo was not measured
 */
export function turnedView(
  { report, canopy, focalLengthPx }: TakenView,
  { elevationDeg, slantMm }: SittingCamera,
  rim: RimPlace,
  usual: UsualBall,
): TurnedView | null {
  const { ball, lopsidedness, widthPx } = report;
  if (report.status !== 'measured' || canopy === null || widthPx === null) return null;
  const reduced = canopy.width / widthPx;
  const mmPerPx = rim.mmPerPx === null ? null : rim.mmPerPx / reduced;
  const slantPx =
    slantMm === null || mmPerPx === null
      ? USUAL_DISTANCE_IN_RADII * usual.radiusPx * reduced
      : slantMm / mmPerPx;
  const view = levelView({
    widthPx: canopy.width,
    heightPx: canopy.height,
    // What is as wide as the focal length in the picture is as far away as it is wide.
    focalLengthPx: focalLengthPx === null ? slantPx : focalLengthPx * reduced,
    rollDeg: report.frame?.turnDeg ?? 0,
    elevationDeg: elevationDeg ?? 0,
    rimPx: [rim.middlePx[0] * reduced, rim.middlePx[1] * reduced],
  });
  const cut = cutOutOf(canopy);
  if (cut === null) return null;
  const around = boundsInView(view, cut, cut.left, cut.top);
  const shorter = Math.cos(radOf(elevationDeg ?? 0));
  const level = maskInView(cut, view.toPhoto, around);
  const ballRadiusPx = (ball?.radiusPx ?? usual.radiusPx) * (reduced / shorter);
  const place = { canopy: level, axisXPx: -around.left, rimYPx: -around.top };
  const aside =
    rim.axisFrom === 'rim' && lopsidedness !== null
      ? { lopsidednessPercent: lopsidedness.percent, lopsidednessPlusMinus: lopsidedness.plusMinus }
      : middleAside(place, ballRadiusPx, asideDoubt(report, rim, usual));
  return {
    turnDeg: report.turnDeg,
    ...place,
    axisFrom: rim.axisFrom,
    mmPerPx: mmPerPx === null ? null : mmPerPx * shorter,
    potHalfWidthPx: rim.halfWidthPx === null ? null : rim.halfWidthPx * (reduced / shorter),
    ballRadiusPx,
    ...aside,
    potPlace: potPlaceOf(report),
    toPhoto: ([x, y]) => {
      const [across, down] = view.toRaster([x + around.left, y + around.top]);
      return [across / reduced, down / reduced];
    },
  };
}

/** 95 % doubt of a canopy's middle against the axis, as a share of the ball's radius. */
function asideDoubt({ ball }: PhotoReport, rim: RimPlace, usual: UsualBall): number {
  const edge = ball === null ? NORMAL_95 * UNKNOWN_EDGE_SHARE : ball.radiusPlusMinusPx / ball.radiusPx;
  return Math.hypot(edge, (NORMAL_95 * rim.doubtPx) / (ball?.radiusPx ?? usual.radiusPx));
}

function middleAside(
  { canopy, axisXPx }: Pick<TurnedView, 'canopy' | 'axisXPx'>,
  ballRadiusPx: number,
  doubt: number,
): Pick<TurnedView, 'lopsidednessPercent' | 'lopsidednessPlusMinus'> {
  const middleXPx = readSilhouette(canopy)?.centroidPx[0] ?? axisXPx;
  return {
    lopsidednessPercent: lopsidednessPercent(middleXPx, axisXPx, ballRadiusPx),
    lopsidednessPlusMinus: 100 * doubt,
  };
}

/** The part of a mask round what is set; `null` when nothing is. */
function cutOutOf({ width, height, data }: Mask) {
  let [left, right, top, bottom] = [width, 0, height, 0];
  for (let y = 0; y < height; y++) {
    const row = data.subarray(y * width, (y + 1) * width);
    const first = row.indexOf(1);
    if (first < 0) continue;
    left = Math.min(left, first);
    right = Math.max(right, row.lastIndexOf(1) + 1);
    top = Math.min(top, y);
    bottom = y + 1;
  }
  if (right <= left) return null;
  const cut = new Uint8Array((right - left) * (bottom - top));
  for (let y = top; y < bottom; y++)
    cut.set(data.subarray(y * width + left, y * width + right), (y - top) * (right - left));
  return { left, top, width: right - left, height: bottom - top, data: cut };
}

/** Where the pot stands, px of the stand's picture where the photo was brought in line with it. */
function potPlaceOf({ axis, scale, frame, widthPx, heightPx }: PhotoReport): PotPlace | null {
  if (axis === null || scale === null || widthPx === null || heightPx === null) return null;
  const { rimLeftPx, rimRightPx } = axis;
  const rimPx = [(rimLeftPx[0] + rimRightPx[0]) / 2, (rimLeftPx[1] + rimRightPx[1]) / 2] as const;
  if (frame === null) return { xPx: rimPx[0], mmPerPx: scale.mmPerPx };
  const inStand = moved(inverseOf(similarityAbout([widthPx / 2, heightPx / 2], frame)), rimPx);
  return { xPx: inStand[0], mmPerPx: scale.mmPerPx * frame.zoom };
}
