import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { PointPx, Raster } from '../../../core/raster/raster.ts';
import {
  chained,
  inverseOf,
  leastSquaresSimilarity,
  moved,
  type Similarity,
  similarityAbout,
} from '../../../core/stand/frame/similarity.ts';
import { seededChance } from '../../../sample-images/render/geometry/seeded-random.ts';
import { type CameraSpec, pinhole, project, sightLine } from '../../../sample-images/render/view/camera.ts';
import { readUprightPhoto } from '../../../server/intake/read-upright-photo.ts';

/** Two photos of one stand of which the second was taken with the camera moved in a known way. */
export interface MovedPair {
  readonly name: string;
  readonly reference: Raster;
  readonly photo: Raster;
  /** Photo px to reference px. */
  readonly toStand: Similarity;
}

/** How the camera was moved: where the picture goes, px, degrees, factor. */
export interface CameraMove {
  readonly shiftPx: PointPx;
  readonly turnDeg: number;
  readonly zoom: number;
}

const SAMPLES = join(import.meta.dirname, '../../../sample-images');
/** What of the sample is kept, so that nothing from beyond its edge comes into the moved photo. */
const WINDOW_SHARE = 0.86;

/** Opens one sample photo. */
export async function openSample(file: string): Promise<Raster> {
  return (await readUprightPhoto(readFileSync(join(SAMPLES, file)))).raster;
}

/** The camera's own shake between two photos of a stand, as the renderer knows it. */
function shakeBetween(file: string, reference: string, size: Raster): Similarity {
  const now = pinhole(cameraOf(file), size.width, size.height);
  const then = pinhole(cameraOf(reference), size.width, size.height);
  const pairs = [0.1, 0.5, 0.9].flatMap((across) =>
    [0.1, 0.5, 0.9].map((down) => {
      const from: PointPx = [across * size.width, down * size.height];
      const sight = sightLine(now, ...from);
      // Both stand at one place, so what lies along the sight is the same at any distance.
      const far = now.eye.map((value, at) => value + 1000 * (sight[at] as number)) as [
        number,
        number,
        number,
      ];
      const { xPx, yPx } = project(then, far);
      return { from, to: [xPx, yPx] as PointPx, weight: 1 };
    }),
  );
  return leastSquaresSimilarity(pairs) as Similarity;
}

function cameraOf(file: string): CameraSpec {
  // The empty stand was rendered with the camera of the first week.
  const truth = file === 'greenhouse-regal/empty.jpg' ? 'greenhouse-regal/2026-09-20.jpg' : file;
  const text = readFileSync(join(SAMPLES, truth.replace(/\.jpg$/, '.truth.json')), 'utf8');
  return (JSON.parse(text) as { camera: CameraSpec }).camera;
}

/**
 * A photo of a sample's stand with the camera moved: cut out of the sample by a window that is shifted, turned and zoomed,
 * resampled between pixels, lit a little otherwise and with fresh noise.
 */
export async function movedPair(
  reference: string,
  file: string,
  move: CameraMove,
  seed: number,
  paint: (raster: Raster, isReference: boolean, toReference: Similarity) => Raster = (raster) => raster,
): Promise<MovedPair> {
  const [whole, wholeReference] = [await openSample(file), await openSample(reference)];
  const shake = shakeBetween(file, reference, whole);
  const centre: PointPx = [whole.width / 2, whole.height / 2];
  const window = similarityAbout(centre, { shiftPx: [0, 0], turnDeg: 0, zoom: WINDOW_SHARE });
  const toStand = inverseOf(similarityAbout(centre, move));
  const fromReference = paint(wholeReference, true, similarityAbout([0, 0], STILL));
  const fromPhoto = paint(whole, false, shake);
  const source = chained(chained(toStand, window), inverseOf(shake));
  return {
    name: `${file} over ${reference}`,
    reference: withNoise(resampled(fromReference, window), 1, seed),
    photo: withNoise(resampled(fromPhoto, source), 1 + 0.1 * seededChance(seed).between(-1, 1, 1), seed + 1),
    toStand,
  };
}

export const STILL: CameraMove = { shiftPx: [0, 0], turnDeg: 0, zoom: 1 };

/** Moves up to these bounds in every way at once, evenly spread. */
export function chanceMove(
  seed: number,
  most: { readonly shiftPx: number; readonly turnDeg: number; readonly zoomShare: number },
): CameraMove {
  const chance = seededChance(seed);
  const direction = chance.between(0, 2 * Math.PI, 1);
  const length = most.shiftPx * Math.sqrt(chance.between(0, 1, 2));
  return {
    shiftPx: [length * Math.cos(direction), length * Math.sin(direction)],
    turnDeg: chance.between(-most.turnDeg, most.turnDeg, 3),
    zoom: 1 + chance.between(-most.zoomShare, most.zoomShare, 4),
  };
}

/** `result(p) = raster(source(p))`, cubic between pixels (Keys 1981, a = -0.5). */
export function resampled(raster: Raster, source: Similarity): Raster {
  const { width, height } = raster;
  const data = new Uint8Array(3 * width * height);
  const [across, down] = [new Float64Array(4), new Float64Array(4)];
  for (let row = 0, at = 0; row < height; row++) {
    for (let column = 0; column < width; column++, at += 3) {
      const [x, y] = moved(source, [column + 0.5, row + 0.5]);
      const [left, top] = [Math.floor(x - 0.5), Math.floor(y - 0.5)];
      cubicWeights(x - 0.5 - left, across);
      cubicWeights(y - 0.5 - top, down);
      for (let channel = 0; channel < 3; channel++) {
        let sum = 0;
        for (let j = 0; j < 4; j++) {
          const line = Math.min(height - 1, Math.max(0, top + j - 1)) * width;
          let part = 0;
          for (let i = 0; i < 4; i++) {
            const place = Math.min(width - 1, Math.max(0, left + i - 1));
            part += (across[i] as number) * (raster.data[3 * (line + place) + channel] as number);
          }
          sum += (down[j] as number) * part;
        }
        data[at + channel] = Math.max(0, Math.min(255, Math.round(sum)));
      }
    }
  }
  return { width, height, data };
}

function cubicWeights(share: number, weights: Float64Array): void {
  const [s, r] = [share, 1 - share];
  weights[0] = -0.5 * s * r * r;
  weights[3] = -0.5 * r * s * s;
  weights[1] = 1 - 2.5 * s * s + 1.5 * s ** 3;
  weights[2] = 1 - 2.5 * r * r + 1.5 * r ** 3;
}

/** Sensor noise of 1.5 levels, and the light multiplied. */
function withNoise(raster: Raster, light: number, seed: number): Raster {
  const chance = seededChance(seed * 31 + 7);
  const data = raster.data.map((value, at) =>
    Math.max(0, Math.min(255, Math.round(light * value + 1.5 * chance.normal(at)))),
  );
  return { ...raster, data };
}

/** How far the fitted frame is off, px of a picture 1600 px on its longer side: root mean square over a grid of the picture. */
export function frameErrorPx(found: Similarity, { toStand, photo }: MovedPair): number {
  let [sum, count] = [0, 0];
  for (let across = 0; across <= 8; across++) {
    for (let down = 0; down <= 8; down++) {
      const point: PointPx = [(across / 8) * photo.width, (down / 8) * photo.height];
      const [x, y] = moved(found, point);
      const [trueX, trueY] = moved(toStand, point);
      sum += (x - trueX) ** 2 + (y - trueY) ** 2;
      count++;
    }
  }
  return (Math.sqrt(sum / count) * 1600) / Math.max(photo.width, photo.height);
}
