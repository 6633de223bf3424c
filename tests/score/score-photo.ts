import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { findPlant } from '../../core/canopy/find-plant.ts';
import type { FoundPlant, NoPlant } from '../../core/canopy/found-plant.ts';
import type { Mask, Raster, UprightPhoto } from '../../core/raster/raster.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';
import type { Pair } from './folders.ts';

/** How one photo came out. */
export interface Scored {
  readonly pair: Pair;
  readonly raster: Raster;
  readonly found: FoundPlant | NoPlant;
  readonly truthMask: Mask;
  /** Intersection over union, 0 when not measured. */
  readonly iou: number;
  readonly ms: number;
  /** Larger distance of the two rim ends from the truth, share of the true rim width; `null` without truth or pot. */
  readonly rimError: number | null;
  /** Found rim width ÷ true rim width - 1. */
  readonly scaleError: number | null;
}

export async function scorePhoto(pair: Pair): Promise<Scored> {
  const { raster, widthPx } = await readPhoto(pair.photo);
  const empty = pair.empty === null ? null : (await readPhoto(pair.empty)).raster;
  const truthMask = await readMask(pair.mask, raster);
  const start = performance.now();
  const found = await findPlant(raster, { empty });
  const ms = performance.now() - start;
  const iou = found.ok ? intersectionOverUnion(found.canopy, truthMask) : 0;
  return { pair, raster, found, truthMask, iou, ms, ...rimErrors(pair, found, raster.width / widthPx) };
}

function rimErrors(pair: Pair, found: FoundPlant | NoPlant, rasterPxPerPhotoPx: number) {
  const axis = pair.truth?.axis;
  if (!axis || !found.ok || found.pot === null) return { rimError: null, scaleError: null };
  const wantedWidth = Math.abs(axis.rimRightPx[0] - axis.rimLeftPx[0]) * rasterPxPerPhotoPx;
  const off = (seen: readonly [number, number], wanted: readonly [number, number]) =>
    Math.hypot(seen[0] - wanted[0] * rasterPxPerPhotoPx, seen[1] - wanted[1] * rasterPxPerPhotoPx) /
    wantedWidth;
  const { rimLeftPx, rimRightPx } = found.pot;
  return {
    rimError: Math.max(off(rimLeftPx, axis.rimLeftPx), off(rimRightPx, axis.rimRightPx)),
    scaleError: (rimRightPx[0] - rimLeftPx[0]) / wantedWidth - 1,
  };
}

async function readPhoto(file: string): Promise<UprightPhoto> {
  return readUprightPhoto(new Uint8Array(readFileSync(file)));
}

async function readMask(file: string, size: Raster): Promise<Mask> {
  const { width, height } = size;
  const grey = await sharp(readFileSync(file))
    .resize(width, height, { fit: 'fill' })
    .greyscale()
    .raw()
    .toBuffer();
  return { width, height, data: Uint8Array.from(grey, (value) => (value >= 128 ? 1 : 0)) };
}

function intersectionOverUnion(one: Mask, other: Mask): number {
  let [both, either] = [0, 0];
  for (let i = 0; i < one.data.length; i++) {
    both += (one.data[i] as number) & (other.data[i] as number);
    either += (one.data[i] as number) | (other.data[i] as number);
  }
  return either === 0 ? 0 : both / either;
}
