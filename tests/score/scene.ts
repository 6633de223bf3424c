import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import type { Mask, Raster } from '../../core/raster/raster.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';
import type { Pair } from './folders.ts';

/** A pair read into memory. All pictures but the empty photo are of one size. */
export interface Scene {
  readonly pair: Pair;
  readonly raster: Raster;
  readonly empty: Raster | null;
  readonly wanted: Mask;
  /** Plant and pot together. */
  readonly wantedWithPot: Mask | null;
  readonly rasterPxPerPhotoPx: number;
}

export async function openScene(pair: Pair): Promise<Scene> {
  const { raster, widthPx } = await readPhoto(pair.photo);
  return {
    pair,
    raster,
    empty: pair.empty === null ? null : (await readPhoto(pair.empty)).raster,
    wanted: await readMask(pair.mask, raster),
    wantedWithPot: pair.maskWithPot === null ? null : await readMask(pair.maskWithPot, raster),
    rasterPxPerPhotoPx: raster.width / widthPx,
  };
}

const readPhoto = (file: string) => readUprightPhoto(new Uint8Array(readFileSync(file)));

async function readMask(file: string, { width, height }: Raster): Promise<Mask> {
  const grey = await sharp(readFileSync(file))
    .resize(width, height, { fit: 'fill' })
    .greyscale()
    .raw()
    .toBuffer();
  return { width, height, data: Uint8Array.from(grey, (value) => (value >= 128 ? 1 : 0)) };
}
