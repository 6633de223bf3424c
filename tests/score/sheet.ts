import sharp from 'sharp';
import type { FoundPlant, NoPlant, UnsureZone } from '../../core/canopy/found-plant.ts';
import { paintStrokes } from '../../core/canopy/paint-strokes.ts';
import type { Stroke } from '../../core/canopy/stroke.ts';
import type { Mask, Raster } from '../../core/raster/raster.ts';
import { cutOutOf } from './score-ours.ts';

const TILE_PX = 480;
const COLUMNS = 5;
/** Distance between the lines of a hatching, share of the longer side. */
const HATCH_SHARE = 0.012;

export interface Shown {
  readonly raster: Raster;
  readonly found: FoundPlant | NoPlant;
  readonly wanted: Mask;
  /** Strokes drawn by the simulated hand, px of the raster. */
  readonly strokes?: readonly Stroke[];
}

const STROKE_COLOURS = { keep: [40, 220, 40], remove: [255, 140, 0] } as const;

/** Puts tiles on one sheet, row by row. */
export async function writeTiles(file: string, tiles: readonly Buffer[]): Promise<void> {
  const rows = Math.ceil(tiles.length / COLUMNS);
  await sharp({
    create: { width: COLUMNS * TILE_PX, height: rows * TILE_PX, channels: 3, background: '#444' },
  })
    .composite(
      tiles.map((input, k) => ({
        input,
        left: (k % COLUMNS) * TILE_PX,
        top: Math.floor(k / COLUMNS) * TILE_PX,
      })),
    )
    .png()
    .toFile(file);
}

/** Found outline red, wanted outline blue, rim ends yellow; unsure zones hatched cyan; strokes green and orange. */
export async function tileOf({ raster, found, wanted, strokes = [] }: Shown): Promise<Buffer> {
  const data = Buffer.from(raster.data);
  const cutOut = cutOutOf(found);
  if (cutOut !== null) for (const zone of cutOut.unsureZones) hatchZone(data, raster, zone);
  paintOutline(data, wanted, [40, 90, 255]);
  if (cutOut !== null) {
    paintOutline(data, cutOut.canopy, [255, 0, 0]);
    if (cutOut.pot !== null) {
      for (const [x, y] of [cutOut.pot.rimLeftPx, cutOut.pot.rimRightPx]) paintCross(data, raster, x, y);
    }
  }
  for (const stroke of strokes) paintStroke(data, raster, stroke);
  const picture = sharp(data, { raw: { width: raster.width, height: raster.height, channels: 3 } });
  return picture
    .extract(aroundMasks(wanted, cutOut?.canopy ?? wanted))
    .resize(TILE_PX - 4, TILE_PX - 4, { fit: 'contain', background: '#444', kernel: 'nearest' })
    .png()
    .toBuffer();
}

/** The two masks' bounding box with a margin, and room below for the pot. */
function aroundMasks(one: Mask, other: Mask) {
  const { width, height } = one;
  let [left, top, right, bottom] = [width, height, 0, 0];
  for (let i = 0; i < one.data.length; i++) {
    if (((one.data[i] as number) | (other.data[i] as number)) === 0) continue;
    const [x, y] = [i % width, Math.floor(i / width)];
    [left, top, right, bottom] = [
      Math.min(left, x),
      Math.min(top, y),
      Math.max(right, x),
      Math.max(bottom, y),
    ];
  }
  if (right < left) return { left: 0, top: 0, width, height };
  const margin = Math.round(0.06 * Math.max(right - left, bottom - top)) + 4;
  left = Math.max(0, left - margin);
  top = Math.max(0, top - margin);
  right = Math.min(width, right + margin);
  bottom = Math.min(height, bottom + 4 * margin);
  return { left, top, width: right - left, height: bottom - top };
}

function hatchZone(data: Buffer, { width, height }: Raster, { mask }: UnsureZone): void {
  const every = Math.max(4, Math.round(HATCH_SHARE * Math.max(width, height)));
  for (let i = 0; i < mask.data.length; i++) {
    const [x, y] = [mask.left + (i % mask.width), mask.top + Math.floor(i / mask.width)];
    if (mask.data[i] === 1 && (x + y) % every < every / 4) data.set([0, 210, 230], 3 * (y * width + x));
  }
}

/** Hatched, so that what lies under it is still seen. */
function paintStroke(data: Buffer, { width, height }: Raster, stroke: Stroke): void {
  const painted = paintStrokes([stroke], { width, height });
  const every = Math.max(2, Math.round((HATCH_SHARE / 4) * Math.max(width, height)));
  painted.labels.forEach((mark, i) => {
    const [x, y] = [i % width, Math.floor(i / width)];
    if (mark !== 0 && (x - y + height) % every < every / 2) data.set(STROKE_COLOURS[stroke.kind], 3 * i);
  });
}

function paintOutline(data: Buffer, mask: Mask, colour: readonly number[]): void {
  const { width, height } = mask;
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1; x < width - 1; x++) {
      const i = y * width + x;
      if (mask.data[i] === 0) continue;
      const rim =
        mask.data[i - 1] === 0 ||
        mask.data[i + 1] === 0 ||
        mask.data[i - width] === 0 ||
        mask.data[i + width] === 0;
      if (rim) data.set(colour, 3 * i);
    }
  }
}

function paintCross(data: Buffer, size: { width: number; height: number }, x: number, y: number): void {
  const reach = Math.max(6, Math.round(size.width / 50));
  for (let off = -reach; off <= reach; off++) {
    for (const [px, py] of [
      [x + off, y],
      [x, y + off],
      [x + off, y + 1],
      [x + 1, y + off],
    ] as const) {
      const [ix, iy] = [Math.round(px), Math.round(py)];
      if (ix >= 0 && iy >= 0 && ix < size.width && iy < size.height) {
        data.set([255, 220, 0], 3 * (iy * size.width + ix));
      }
    }
  }
}
