import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { renderView, type ViewOptions } from '../../sample-images/render/render-view.ts';
import { encodeMask, encodePhoto } from '../../sample-images/render/write-photo.ts';

/** Where the files of one rendered photo lie. */
export interface ShotFiles {
  readonly photo: string;
  readonly mask: string;
  readonly truth: string;
}

/** Renders are kept in the system's folder for passing files, named by what they were made from. */
const CACHE = join(tmpdir(), 'rondure-reshot');
const TIME = '2026:09:20 10:30:00';

/** The files of a rendered photo, made where they are not there yet. */
export async function shotFiles(view: ViewOptions): Promise<ShotFiles> {
  mkdirSync(CACHE, { recursive: true });
  const digest = createHash('sha256').update(JSON.stringify(view)).digest('hex').slice(0, 16);
  const stem = join(CACHE, digest);
  const files = { photo: `${stem}.jpg`, mask: `${stem}.canopy.png`, truth: `${stem}.truth.json` };
  // The truth comes last: where it is, all is.
  if (existsSync(files.truth)) return files;
  const { raster, canopy, truth } = renderView(view);
  writeFileSync(files.photo, await encodePhoto(raster, TIME, false));
  writeFileSync(files.mask, await encodeMask(canopy));
  writeFileSync(`${files.truth}.part`, JSON.stringify({ axis: truth.axis, mmPerPx: truth.mmPerPx }));
  renameSync(`${files.truth}.part`, files.truth);
  return files;
}

export function readTruth({ truth }: ShotFiles): ShotTruth {
  return JSON.parse(readFileSync(truth, 'utf8')) as ShotTruth;
}

/** What the renderer knows of a photo, px. */
export interface ShotTruth {
  readonly axis: {
    readonly xPx: number;
    readonly rimLeftPx: readonly [number, number];
    readonly rimRightPx: readonly [number, number];
  };
  readonly mmPerPx: number;
}
