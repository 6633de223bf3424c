import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { measureFound } from '../../core/measure-photo.ts';
import type { Mask, PointPx, UprightPhoto } from '../../core/raster/raster.ts';
import type { PhotoReport } from '../../core/report.ts';
import type { ViewTruth } from '../../sample-images/render/truth.ts';
import { readUprightPhoto } from '../../server/intake/read-upright-photo.ts';
import { foundPlant, potWithRim } from '../core/drawn-shapes.ts';
import { SAMPLES, type SamplePhoto } from './sample-photos.ts';

/** What is really there on a sample photo. */
export interface SampleTruth {
  readonly built: ViewTruth;
  readonly mask: Mask;
  /** Every measure of the true mask with the true rim. */
  readonly report: PhotoReport;
  readonly outlinePx: readonly PointPx[];
}

/** The truth beside a sample photo; `null` where it has none. */
export async function truthBeside(sample: SamplePhoto, photo: UprightPhoto): Promise<SampleTruth | null> {
  const stem = join(SAMPLES, sample.file.replace(/\.jpg$/, ''));
  if (!existsSync(`${stem}.truth.json`)) return null;
  const built = JSON.parse(await readFile(`${stem}.truth.json`, 'utf8')) as ViewTruth;
  const mask = await whiteOf(`${stem}.canopy.png`);
  const pot = potWithRim(built.axis.rimLeftPx, built.axis.rimRightPx);
  const { report, outlinePx } = measureFound(foundPlant(mask, pot), {
    name: sample.file,
    widthPx: photo.widthPx,
    heightPx: photo.heightPx,
    rasterWidthPx: mask.width,
    rasterHeightPx: mask.height,
    rimMm: built.rimMm,
    turnDeg: sample.turnDeg,
    notes: [],
  });
  return { built, mask, report, outlinePx };
}

async function whiteOf(file: string): Promise<Mask> {
  const { width, height, data } = (await readUprightPhoto(await readFile(file))).raster;
  const inside = Uint8Array.from({ length: width * height }, (_, at) => (data[3 * at] as number) >> 7);
  return { width, height, data: inside };
}
