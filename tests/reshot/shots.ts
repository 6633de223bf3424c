import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { renderEmptyStand, renderView, type ViewOptions } from '../../sample-images/render/render-view.ts';
import { encodePhoto } from '../../sample-images/render/write-photo.ts';

/** Renders are kept in the system's folder for passing files, named by what they were made from. */
const CACHE = join(tmpdir(), 'rondure-reshot');
const TIME = '2026:09:20 10:30:00';

/** The file of a rendered photo, made where it is not there yet. */
export async function shotFile(view: ViewOptions): Promise<string> {
  mkdirSync(CACHE, { recursive: true });
  const file = join(CACHE, `${digestOf(view)}.jpg`);
  if (existsSync(file)) return file;
  writeFileSync(`${file}.part`, await encodePhoto(renderView(view).raster, TIME, false));
  renameSync(`${file}.part`, file);
  return file;
}

/** A photo of the stand with nothing on it. */
export async function emptyStandFile(view: ViewOptions): Promise<string> {
  mkdirSync(CACHE, { recursive: true });
  const file = join(CACHE, `${digestOf(view)}.empty.jpg`);
  if (!existsSync(file)) writeFileSync(file, await encodePhoto(renderEmptyStand(view), TIME, false));
  return file;
}

function digestOf(view: ViewOptions): string {
  return createHash('sha256').update(JSON.stringify(view)).digest('hex').slice(0, 16);
}
