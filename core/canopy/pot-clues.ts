import type { LabPicture } from '../raster/lab.ts';
import type { Mask } from '../raster/raster.ts';
import type { Evidence } from './evidence.ts';
import type { PotClues } from './pot-shape.ts';

/** ΔE from the foot's colour within which a pixel is taken for the same pot. */
const SAME_POT_DELTA = 14;
/** ΔE across two pixels that makes a full side edge. */
const FULL_EDGE_DELTA = 24;

/**
 * What each pixel says about a pot's body: backdrop against, leaf against, the colour found at the foot of the
 * object for, other neutral colours a little for; and how strong an upright edge it stands on.
 */
export function potClues(
  picture: LabPicture,
  object: Evidence,
  plant: Evidence,
  foot: FootColour | null,
): PotClues {
  const { width, height } = picture;
  const body = new Float32Array(width * height);
  for (let i = 0; i < body.length; i++) {
    const stands = Math.max(-1, Math.min(1, (object.logOdds[i] as number) / 2.5));
    if (stands <= 0) {
      body[i] = 1.2 * stands;
      continue;
    }
    const leafy = Math.max(-1, Math.min(1, (plant.logOdds[i] as number) / 2));
    const alike = foot === null ? 0 : likeness(picture, i, foot);
    body[i] = stands * (alike * 1 + (1 - alike) * (leafy > 0 ? -0.9 * leafy : 0.45));
  }
  return { width, height, body, side: sideEdges(picture) };
}

/** The colour of whatever stands lowest, which is the pot unless leaves hang to the ground. */
export interface FootColour {
  readonly l: number;
  readonly a: number;
  readonly b: number;
}

/** Median colour of the object's lowest rows, over the pixels where it is widest below; `null` when nothing stands. */
export function footColour(picture: LabPicture, object: Mask): FootColour | null {
  const { width, height, data } = object;
  const rows = Array.from({ length: height }, (_, y) => y).filter((y) =>
    data.subarray(y * width, (y + 1) * width).includes(1),
  );
  const [top, bottom] = [rows[0], rows.at(-1)];
  if (top === undefined || bottom === undefined) return null;
  const tall = bottom - top + 1;
  const places: number[] = [];
  for (let y = Math.floor(bottom - 0.12 * tall); y <= bottom - 0.02 * tall; y++) {
    for (let x = 0; x < width; x++) if (data[y * width + x] === 1) places.push(y * width + x);
  }
  if (places.length === 0) return null;
  const middle = (plane: Float32Array) => {
    const values = places.map((i) => plane[i] as number).sort((one, other) => one - other);
    return values[values.length >> 1] as number;
  };
  return { l: middle(picture.l), a: middle(picture.a), b: middle(picture.b) };
}

/** 1 for the foot's own colour, falling to 0; lightness counts half, as a round pot is lit from one side. */
export function likeness(picture: LabPicture, i: number, foot: FootColour): number {
  const l = 0.5 * ((picture.l[i] as number) - foot.l);
  const a = (picture.a[i] as number) - foot.a;
  const b = (picture.b[i] as number) - foot.b;
  const delta = Math.sqrt(l * l + a * a + b * b);
  return Math.max(0, Math.min(1, 2 - delta / SAME_POT_DELTA));
}

function sideEdges(picture: LabPicture): Float32Array {
  const { width, height, l, a, b } = picture;
  const side = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      const dl = (l[i + 1] as number) - (l[i - 1] as number);
      const da = (a[i + 1] as number) - (a[i - 1] as number);
      const db = (b[i + 1] as number) - (b[i - 1] as number);
      side[i] = Math.min(1, Math.sqrt(dl * dl + da * da + db * db) / FULL_EDGE_DELTA);
    }
  }
  return side;
}
