import { latticeChance, smoothNoise } from '../geometry/seeded-random.ts';
import type { Vec3 } from '../geometry/vector.ts';
import { blurPicture, type Picture } from './picture.ts';

/** How the camera turns light into a photo. */
export interface FinishSpec {
  /** Stops above or below the usual exposure. */
  readonly exposureStops: number;
  /** Gains of red, green and blue that the camera chose. */
  readonly whiteBalance: Vec3;
  /** Softness of the lens, px. */
  readonly lensBlurPx: number;
  /** Spread of the sensor's noise in mid-grey, 8-bit steps. */
  readonly noise: number;
  readonly noiseSeed: number;
}

/** The tone curve is looked up in steps of 1/4096 of white, up to four times white. */
const CURVE_SCALE = 4096;
const CURVE_STEPS = 4 * CURVE_SCALE;
/** Phones push colours a little away from grey. */
const VIVIDNESS = 1.12;

/** Develops linear light to 8-bit sRGB: lens, fall-off to the corners, exposure, tone curve, noise. */
export function developPhoto(picture: Picture, finish: FinishSpec): Uint8Array {
  const { widthPx, heightPx } = picture;
  const { light } = finish.lensBlurPx > 0.2 ? blurPicture(picture, finish.lensBlurPx) : picture;
  const gain = 2 ** finish.exposureStops;
  const curve = Float32Array.from({ length: CURVE_STEPS + 1 }, (_, step) => toneCurve(step / CURVE_SCALE));
  const photo = new Uint8Array(light.length);
  const corner = Math.hypot(widthPx, heightPx) / 2;
  for (let row = 0; row < heightPx; row++) {
    for (let column = 0; column < widthPx; column++) {
      const fromCentre = Math.hypot(column - widthPx / 2, row - heightPx / 2) / corner;
      const fallOff = 1 - 0.16 * fromCentre ** 2.4;
      const at = 3 * (row * widthPx + column);
      const noise = bell(column, row, finish.noiseSeed);
      const grey =
        0.21 * (light[at] as number) + 0.72 * (light[at + 1] as number) + 0.07 * (light[at + 2] as number);
      const blotch = 0.8 * smoothNoise(column / 3.1, row / 3.1, finish.noiseSeed + 1);
      for (let band = 0; band < 3; band++) {
        const vivid = grey + VIVIDNESS * ((light[at + band] as number) - grey);
        const linear = Math.max(0, vivid) * gain * fallOff * (finish.whiteBalance[band] as number);
        const value = curve[Math.min(CURVE_STEPS, Math.round(linear * CURVE_SCALE))] as number;
        const spread = finish.noise * (0.6 + 0.8 * (1 - value));
        const own = 0.35 * (2 * latticeChance(column, row, finish.noiseSeed + 7 + band) - 1);
        const tint = band === 1 ? 0 : (band - 1) * blotch;
        photo[at + band] = Math.round(
          Math.min(255, Math.max(0, 255 * value + spread * (noise + own + 0.5 * tint))),
        );
      }
    }
  }
  return photo;
}

/** Linear light to a share of full scale: sRGB (IEC 61966-2-1) with a soft shoulder and a little contrast. */
function toneCurve(linear: number): number {
  const held = Math.max(0, linear);
  const shouldered = (held * (1 + held / 3.2)) / (1 + 0.62 * held);
  const coded = shouldered <= 0.0031308 ? 12.92 * shouldered : 1.055 * shouldered ** (1 / 2.4) - 0.055;
  const value = Math.min(1, coded);
  return value + 0.16 * value * (1 - value) * (2 * value - 0.86);
}

/** A number of roughly normal spread 1: the sum of three even ones. */
function bell(column: number, row: number, seed: number): number {
  const sum =
    latticeChance(column, row, seed + 11) +
    latticeChance(column, row, seed + 12) +
    latticeChance(column, row, seed + 13);
  return 2 * (sum - 1.5);
}
