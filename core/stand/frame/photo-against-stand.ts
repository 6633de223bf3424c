import { edgeWidthPx } from '../../canopy/photo-quality.ts';
import type { OpenCvDoor } from '../../opencv/door.ts';
import { type LabPicture, LINEAR_OF_BYTE, labOfRaster } from '../../raster/lab.ts';
import type { Mask, Raster } from '../../raster/raster.ts';
import { valueOfRank } from '../../raster/value-of-rank.ts';

/** Stops of light by which a photo may differ from the stand's first picture without a word. */
const MOST_STOPS = 1;
/** How much wider edges may be than in the stand's first picture, and how wide they must be to be called unsharp, px. */
const MOST_SOFTER = 1.7;
const UNSHARP_PX = 3;
/** Only what is neither black nor burnt out tells the light. */
const DARKEST = 8;
const LIGHTEST = 247;

/** How a photo is lit and how sharp it is beside the stand's first picture. */
export interface AgainstStand {
  /** Light of what stands still, in stops, lighter positive; `null` when too little can be compared. */
  readonly stops: number | null;
  /** Edge width ÷ edge width in the reference; `null` when one of them has no clear edge. */
  readonly softer: number | null;
  readonly notes: readonly string[];
}

/**
 * Judges a photo's light and sharpness against the stand's first picture, on what is not plant.
 *
 * @param photo and reference are reduced copies of one size
 * @param plant where plant and pot stand, of that size; `null` when not known
 *
 * Notes: the light is the median ratio pixel by pixel in linear light; a small move of the camera does not matter to it.
 * What makes a photo unusable by itself (too dark, blurred) is refused where the plant is cut out.
 */
export function photoAgainstStand(
  door: OpenCvDoor,
  photo: Raster,
  reference: Raster,
  plant: Mask | null,
): AgainstStand {
  const stops = stopsBetween(photo, reference, plant);
  const still = stillMask(photo, plant);
  const widths = [photo, reference].map((one) => edgeWidthPx(door, labOfRaster(one) as LabPicture, still));
  const [width, before] = widths as [number | null, number | null];
  const softer = width === null || before === null ? null : width / before;
  const notes: string[] = [];
  if (stops !== null && Math.abs(stops) > MOST_STOPS) {
    const times = Math.round(2 ** Math.abs(stops) * 2) / 2;
    notes.push(
      stops < 0
        ? `The stand is about ${times} times darker than in its first picture: photograph at the same hour or with the same lamp, so that outlines are drawn alike.`
        : `The stand is about ${times} times lighter than in its first picture: photograph at the same hour or with the same lamp, so that outlines are drawn alike.`,
    );
  }
  if (softer !== null && width !== null && softer > MOST_SOFTER && width > UNSHARP_PX) {
    notes.push(
      'The photo is less sharp than the stand’s first picture: wipe the lens, put the camera on something firm and let it focus on the plant.',
    );
  }
  return { stops, softer, notes };
}

function stopsBetween(photo: Raster, reference: Raster, plant: Mask | null): number | null {
  const pixels = photo.width * photo.height;
  const ratios = new Float64Array(Math.ceil(pixels / 5));
  let count = 0;
  for (let i = 0; i < pixels; i += 5) {
    if (plant?.data[i] === 1) continue;
    const now = photo.data[3 * i + 1] as number;
    const before = reference.data[3 * i + 1] as number;
    if (now < DARKEST || before < DARKEST || now > LIGHTEST || before > LIGHTEST) continue;
    ratios[count++] = (LINEAR_OF_BYTE[now] as number) / (LINEAR_OF_BYTE[before] as number);
  }
  if (count < pixels / 100) return null;
  return Math.log2(valueOfRank(ratios.subarray(0, count), count >> 1) as number);
}

function stillMask({ width, height }: Raster, plant: Mask | null): Mask {
  const data = new Uint8Array(width * height).fill(1);
  if (plant !== null) for (let i = 0; i < data.length; i++) data[i] = 1 - (plant.data[i] as number);
  return { width, height, data };
}
