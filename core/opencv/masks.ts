import type { Mask } from '../raster/raster.ts';
import type { Keep, OpenCvDoor } from './door.ts';
import type { Mat, OpenCv } from './typings.ts';

/**
 * How deep each pixel lies in a mask: distance in px from its centre to the nearest centre outside, 0 outside; very
 * large everywhere when nothing is outside (Felzenszwalb, Huttenlocher 2004, exact).
 */
export function depthInMask(door: OpenCvDoor, mask: Mask): Float32Array {
  return door.use((cv, keep) => {
    const to = keep(new cv.Mat());
    cv.distanceTransform(matOfMask(cv, keep, mask), to, cv.DIST_L2, cv.DIST_MASK_PRECISE);
    return to.data32F.slice();
  });
}

/** A connected part of a mask: its label in the label picture, area and bounding box in px. */
export interface MaskPart {
  readonly label: number;
  readonly areaPx: number;
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** The 8-connected parts of a mask, largest first, with the picture of their labels (0 = outside). */
export function maskParts(door: OpenCvDoor, mask: Mask): { parts: MaskPart[]; labels: Int32Array } {
  return door.use((cv, keep) => {
    const from = matOfMask(cv, keep, mask);
    const [labels, stats, centroids] = [keep(new cv.Mat()), keep(new cv.Mat()), keep(new cv.Mat())];
    const count = cv.connectedComponentsWithStats(from, labels, stats, centroids, 8, cv.CV_32SC1);
    const table = stats.data32S;
    const parts: MaskPart[] = [];
    for (let label = 1; label < count; label++) {
      const [left = 0, top = 0, width = 0, height = 0, areaPx = 0] = table.subarray(label * 5, label * 5 + 5);
      parts.push({ label, areaPx, left, top, width, height });
    }
    parts.sort((one, other) => other.areaPx - one.areaPx);
    return { parts, labels: labels.data32S.slice() };
  });
}

export function matOfMask(cv: OpenCv, keep: Keep, mask: Mask): Mat {
  const mat = keep(new cv.Mat(mask.height, mask.width, cv.CV_8UC1));
  mat.data.set(mask.data);
  return mat;
}
