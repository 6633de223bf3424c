import type { Raster } from '../../../core/raster/raster.ts';
import { seededChance } from '../../../sample-images/render/geometry/seeded-random.ts';
import { along, dot, subtract, type Vec3 } from '../../../sample-images/render/geometry/vector.ts';
import { type Pinhole, sightLine } from '../../../sample-images/render/view/camera.ts';
import { type DrawnSheet, FINE_PER_MM } from '../frames/drawn-sheet.ts';

/** A sheet, A4, that hangs upright behind a plant. Mm from the middle of the pot's rim. */
export interface HungSheet {
  /** How far the plant's axis stands before the sheet's plane, along its normal. */
  readonly behindMm: number;
  /** How far the backdrop is turned away from facing the camera, degrees; its right side away when positive. */
  readonly turnDeg: number;
  /** The sheet's upper left corner on that plane: right of the foot of the perpendicular from the axis, and above the rim. */
  readonly cornerMm: readonly [right: number, up: number];
}

/** Samples a px of the photo along each side. */
const SAMPLES = 3;
/** Paper in the stand's light, and black ink on it, of 255; the camera's noise. */
const [WHITE, BLACK] = [205, 22];
const NOISE = 1.5;

/** Hangs the sheet into a rendered photo, seen by the photo's own camera; what stands before it must not reach there. */
export function hangSheet(
  photo: Raster,
  camera: Pinhole,
  sheet: DrawnSheet,
  hung: HungSheet,
  seed: number,
): Raster {
  const chance = seededChance(seed);
  const turnRad = (hung.turnDeg * Math.PI) / 180;
  const right: Vec3 = [Math.cos(turnRad), Math.sin(turnRad), 0];
  const away: Vec3 = [-Math.sin(turnRad), Math.cos(turnRad), 0];
  const foot = along([0, 0, 0], away, hung.behindMm);
  const depth = dot(subtract(foot, camera.eye), away);
  const greyAt = (x: number, y: number): number | null => {
    const sight = sightLine(camera, x, y);
    const point = along(camera.eye, sight, depth / dot(sight, away));
    const across = Math.floor((dot(subtract(point, foot), right) - hung.cornerMm[0]) * FINE_PER_MM);
    const down = Math.floor((hung.cornerMm[1] - point[2]) * FINE_PER_MM);
    const isOff = across < 0 || down < 0 || across >= sheet.width || down >= sheet.height;
    return isOff ? null : (sheet.grey[down * sheet.width + across] as number);
  };
  const { width, height } = photo;
  const data = photo.data.slice();
  for (let row = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      let [light, covered] = [0, 0];
      for (let sample = 0; sample < SAMPLES * SAMPLES; sample++) {
        const grey = greyAt(
          column + ((sample % SAMPLES) + 0.5) / SAMPLES,
          row + (Math.floor(sample / SAMPLES) + 0.5) / SAMPLES,
        );
        if (grey === null) continue;
        covered++;
        light += BLACK + (WHITE - BLACK) * grey;
      }
      if (covered === 0) continue;
      const rest = 1 - covered / SAMPLES ** 2;
      for (let band = 0; band < 3; band++) {
        const at = 3 * (row * width + column) + band;
        const value = rest * (data[at] as number) + light / SAMPLES ** 2 + NOISE * chance.normal(at);
        data[at] = Math.max(0, Math.min(255, Math.round(value)));
      }
    }
  }
  return { width, height, data };
}
