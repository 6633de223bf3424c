import { PARTS, type PartMap } from '../canopy/found-plant.ts';
import { balancedLab, type ColourBalance } from '../colour/colour-balance.ts';
import { colourfulness, hueDeg } from '../colour/hue.ts';
import type { OpenCvDoor } from '../opencv/door.ts';
import { shrinkRaster } from '../opencv/pictures.ts';
import type { LabPicture } from '../raster/lab.ts';
import type { Raster } from '../raster/raster.ts';
import { middleOf } from './middle-of.ts';

/** Longer side of the copy that colours are read on, px: a px of it is the mean of several, with less noise. */
const COPY_SIDE_PX = 800;
/**
 * Glare: the strongest channel is cut off and the weakest all but white. Where only red or green is cut off the place is taken
 * as it is: yellow leaf in full light burns out first, and left out it would be missing.
 */
const GLARE = { strongest: 252, weakest: 200 };
/** Byte below which all three channels say more of noise than of colour. */
const TOO_DARK = 24;

/** Colours of the leaf in one photo, balanced: one entry for each px of the copy that is leaf all over and can be judged. */
export interface LeafColours {
  /** The copy's size, and the side of its px in px of the raster. */
  readonly width: number;
  readonly height: number;
  readonly pxPerPx: number;
  /** Where each colour was read: row × width + column of the copy. */
  readonly at: Int32Array;
  readonly l: Float32Array;
  readonly a: Float32Array;
  readonly b: Float32Array;
  /** Lightness of the middle leaf: shades are told beside it. */
  readonly middleL: number;
  /** Px of the copy that are leaf all over, judged or not. */
  readonly leafPx: number;
  /** Px of the copy that were told to be petal and are of yellow leaf's colour. */
  readonly yellowPetalPx: number;
}

/** What colours of leaf are read by. */
export interface ColourClues {
  /** White and exposure of the photo. */
  readonly balance: ColourBalance;
  /** Whether petals were told from leaf by more than their colour. */
  readonly petalsTold: boolean;
}

/** Hue (degrees) and colourfulness of leaf in full yellow, and of yellow petals. */
const YELLOW_LEAF = { redder: 84, greener: 113, colour: 0.45 };

const LEAF = PARTS.indexOf('leaf');
const FLOWER = PARTS.indexOf('flower');

/**
 * Reads the colours of the leaves.
 *
 * @param parts what each pixel of the raster is
 *
 * Notes: px on an edge are mixed with what lies behind and are left out, as are glare and what is too dark. Where petals were told
 * by colour alone, those that are yellow as leaf turns are read as leaf: bright yellow leaf would be missing else, and
 * pelargoniums and fuchsias have next to no yellow flowers.
 */
export function leafColours(
  door: OpenCvDoor,
  raster: Raster,
  parts: PartMap,
  { balance, petalsTold }: ColourClues,
): LeafColours {
  const copy = shrinkRaster(door, raster, COPY_SIDE_PX);
  const { width, height, data } = copy;
  const pxPerPx = raster.width / width;
  const picture = balancedLab(copy, balance);
  const { isLeaf, yellowPetalPx } = leafOnCopy(parts, picture, petalsTold);
  const at: number[] = [];
  let leafPx = 0;
  for (let i = 0; i < isLeaf.length; i++) {
    if (isLeaf[i] === 0) continue;
    leafPx++;
    const [red, green, blue] = [data[3 * i] as number, data[3 * i + 1] as number, data[3 * i + 2] as number];
    const strongest = Math.max(red, green, blue);
    const isGlare = strongest >= GLARE.strongest && Math.min(red, green, blue) >= GLARE.weakest;
    if (strongest >= TOO_DARK && !isGlare) at.push(i);
  }
  const read = (plane: Float32Array) => {
    const colours = new Float32Array(at.length);
    for (let k = 0; k < at.length; k++) colours[k] = plane[at[k] as number] as number;
    return colours;
  };
  const l = read(picture.l);
  return {
    width,
    height,
    pxPerPx,
    at: Int32Array.from(at),
    l,
    a: read(picture.a),
    b: read(picture.b),
    middleL: middleOf(l),
    leafPx,
    yellowPetalPx,
  };
}

/** Middle and both sides of a px, a little beyond it. */
const ACROSS = [0.5, -0.25, 1.25] as const;

/** 1 for each px of a copy that is leaf in its middle and at its four corners, and so is not mixed with what lies behind; and how many are yellow petal. */
function leafOnCopy(
  parts: PartMap,
  { width, height, l, a, b }: LabPicture,
  petalsTold: boolean,
): { readonly isLeaf: Uint8Array; readonly yellowPetalPx: number } {
  const isLeaf = new Uint8Array(width * height);
  let yellowPetalPx = 0;
  const columns = ACROSS.map((right) => placesAcross(width, parts.width, right));
  const rows = ACROSS.map((down) => placesAcross(height, parts.height, down));
  const [middleColumn, middleRow] = [columns[0] as Int32Array, rows[0] as Int32Array];
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const middle = parts.data[(middleRow[y] as number) * parts.width + (middleColumn[x] as number)];
      if (middle !== LEAF && middle !== FLOWER) continue;
      const isYellow = isYellowLeaf(l[i] as number, a[i] as number, b[i] as number);
      if (petalsTold && middle === FLOWER) {
        if (isYellow) yellowPetalPx++;
        continue;
      }
      const mayBeFlower = isYellow && !petalsTold;
      let isInside = true;
      for (const row of rows) {
        const from = (row[y] as number) * parts.width;
        for (const column of columns) {
          const part = parts.data[from + (column[x] as number)];
          if (part !== LEAF && !(mayBeFlower && part === FLOWER)) isInside = false;
        }
      }
      if (isInside) isLeaf[i] = 1;
    }
  }
  return { isLeaf, yellowPetalPx };
}

/** For each place along a side of the copy the place on the part map's, the copy's being looked at so far from its start, within the map. */
function placesAcross(side: number, mapSide: number, aside: number): Int32Array {
  return Int32Array.from({ length: side }, (_, at) =>
    Math.min(mapSide - 1, Math.max(0, Math.floor(((at + aside) * mapSide) / side))),
  );
}

function isYellowLeaf(l: number, a: number, b: number): boolean {
  const hue = hueDeg(a, b);
  return hue > YELLOW_LEAF.redder && hue < YELLOW_LEAF.greener && colourfulness(l, a, b) > YELLOW_LEAF.colour;
}
