import type { Homography } from '../frame/frame-fit.ts';
import type { SheetPlace } from '../known-stand.ts';
import { mapPoint } from './paper-map.ts';
import type { SheetGeometry } from './sheet-geometry.ts';
import type { ArrowLight } from './sheet-reading.ts';

/** Which way the arrow points in the photo: degrees clockwise from straight up, −180 to 180. */
export function arrowTurn({ arrow }: SheetGeometry, paperToPhoto: Homography): number {
  const [tailX, tailY] = mapPoint(paperToPhoto, arrow.tailMm);
  const [tipX, tipY] = mapPoint(paperToPhoto, arrow.tipMm);
  return (Math.atan2(tipX - tailX, tailY - tipY) * 180) / Math.PI;
}

/**
 * The side the light comes from, by the quarter the arrow points to.
 *
 * Notes: up on a backdrop is above; up on the bench is away from the camera. No light comes from below a backdrop.
 */
export function lightOfArrow(arrowTurnDeg: number, place: SheetPlace): ArrowLight | null {
  if (Math.abs(arrowTurnDeg) <= 45) return place === 'backdrop' ? 'above' : 'behind-plant';
  if (Math.abs(arrowTurnDeg) < 135) return arrowTurnDeg > 0 ? 'right' : 'left';
  return place === 'backdrop' ? null : 'behind-camera';
}
